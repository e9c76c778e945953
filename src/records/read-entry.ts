import { isBlank, readLine } from '../notation/read-line.ts';
import type { Notice } from '../notation/reading-rules.ts';
import { BODY_WORDS, type EntryKind, FIRST_WORDS, isBodyWord, isHeader } from '../notation/words.ts';
import { nearNames } from '../text/near.ts';
import { LONGEST_LINE, spanOf } from '../text/span.ts';
import { BINDERS, type Fields } from './bind/body.ts';
import { bindCaution } from './bind/client-lines.ts';
import { type Cursor, type Opened, open } from './bind/cursor.ts';
import { bindClientHead, bindSalon, bindShelfHead, bindStockHead, bindStylist, bindVisitHead } from './bind/headers.ts';
import { bindFree } from './bind/visit-lines.ts';
import { type Cut, isConflictEnd, isConflictStart } from './cut.ts';
import type { Entry, Fact } from './schema/entry.ts';
import type { Unread } from './schema/shelf.ts';

/**
 * One entry, bound: its record, with lines counted from its header, and what is wrong with its typing.
 *
 * Reads: the lines of one entry, nothing else. Runs again: when one of them changes.
 */
export type EntryRead = { readonly entry: Entry; readonly notices: readonly Notice[] };

const unread = (text: string, line: number): Unread => ({ word: 'unread', line, typed: text.trim() });

const entryWords = (kind: EntryKind): string[] =>
  FIRST_WORDS.filter((word) => isBodyWord(word) && underOf(word).includes(kind));
const underOf = (word: string): readonly EntryKind[] => (isBodyWord(word) ? BODY_WORDS[word].under : []);
const list = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} or ${words.at(-1)}`;

/** A first word that is not of the notation, or not of this entry. */
const strange = (text: string, line: number, kind: EntryKind): Notice => {
  const { word, wordRun } = readLine(text);
  const start = text.length - text.trimStart().length;
  const at = word === '' ? spanOf(start, Math.max(text.trimEnd().length, start + 1)) : spanOf(wordRun.from, wordRun.to);
  if (isBodyWord(word)) {
    return {
      rule: 'wrong-entry',
      line,
      at,
      message: `\`${word}\` belongs under ${list(underOf(word).map((under) => `\`${under}\``))}, and this line stands under \`${kind}\`.`,
      todo: 'Move the line there, or write `note` before it.',
      label: 'kept as typed',
    };
  }
  if (word === '')
    return {
      rule: 'unknown-word',
      line,
      at,
      message: 'The line begins with no word.',
      todo: 'Write `note` before it to keep it as text.',
      label: 'kept as typed',
    };
  const typed = text.slice(wordRun.from, wordRun.to);
  const near = [...new Set([...nearNames(word, entryWords(kind)), ...nearNames(word, FIRST_WORDS)])].slice(0, 3);
  const [first] = near;
  return {
    rule: 'unknown-word',
    line,
    at,
    message: `\`${typed}\` is not a word of the notation.`,
    todo:
      first === undefined
        ? 'Write `note` before it to keep it as text.'
        : `Write ${list(near.map((name) => `\`${name}\``))}, or \`note\` before the line to keep it as text.`,
    label: first === undefined ? 'kept as typed' : `near: ${first}`,
    ...(first !== undefined && { put: { title: `write ${first}`, text: first, sure: 'likely' as const } }),
  };
};

const bindFreeLine = (text: string, line: number, word: string, from: number, notices: Notice[]): object => {
  const cursor: Cursor = { text, line, items: [], next: 0, notices };
  const free = bindFree(text, from);
  if (free.text === '') {
    notices.push({
      rule: 'nothing-said',
      line,
      at: spanOf(0, text.length),
      message: `The \`${word}\` line says nothing yet.`,
      todo: 'Write the text after the word.',
    });
  }
  if (word === 'caution') {
    const { caution, closing } = bindCaution(text, from, cursor);
    return { word, line, ...caution, ...closing };
  }
  if (word === 'photo') return { word, line, file: free.text, ...free.closing };
  return { word, line, text: free.text, ...free.closing };
};

/** Binds one body line into its facts: usually one, several where a line lists charges, an unread one where it fails. */
const bindBody = (text: string, line: number, kind: EntryKind, notices: Notice[]): object[] => {
  const read = readLine(text);
  const { word, wordRun, tree } = read;
  if (text.length > LONGEST_LINE) {
    const kilobytes = Math.round(text.length / 1000);
    notices.push({
      rule: 'line-too-long',
      line,
      at: spanOf(0, 80),
      message: `The line has ${kilobytes} thousand characters; the longest that is read has ${LONGEST_LINE / 1000} thousand.`,
      todo: 'Break it into lines.',
      label: 'kept as typed',
    });
    return [unread(text, line)];
  }
  if (text.includes('\0')) {
    const first = text.indexOf('\0');
    notices.push({
      rule: 'nul-byte',
      line,
      at: spanOf(first, first + 1),
      message: 'The line holds a NUL byte, which no editor types.',
      todo: 'Take it out, and check the file against its last copy.',
      label: 'kept as typed',
    });
    return [unread(text, line)];
  }
  if (!isBodyWord(word) || !underOf(word).includes(kind)) {
    notices.push(strange(text, line, kind));
    return [unread(text, line)];
  }
  if (word === 'aim' || word === 'note' || word === 'care' || word === 'caution' || word === 'photo')
    return [bindFreeLine(text, line, word, wordRun.to, notices)];
  const opened = open(text, line, tree, notices);
  const known = notices.length;
  const fields: Fields = BINDERS[word](opened, word);
  const { closing, cursor } = opened;
  const rest = cursor.rest === undefined ? {} : { rest: cursor.rest };
  const all = fields === undefined ? [] : Array.isArray(fields) ? (fields as object[]) : [fields as object];
  if (all.length === 0) {
    // A binder that gives nothing has said why; should one forget, the line is still reported.
    if (notices.length === known)
      notices.push({
        rule: 'nothing-said',
        line,
        at: spanOf(wordRun.from, text.length),
        message: `The \`${word}\` line is not understood.`,
        label: 'kept as typed',
      });
    return [unread(text, line)];
  }
  return all.map((one) => ({ word, line, ...one, ...closing, ...rest }));
};

const headOf = (opened: Opened, kind: EntryKind): object => {
  switch (kind) {
    case 'salon':
      return bindSalon(opened);
    case 'stylist':
      return bindStylist(opened);
    case 'range': {
      const { inRatio: _inRatio, strength: _strength, ...head } = bindShelfHead(opened, kind);
      return head;
    }
    case 'product':
      return bindShelfHead(opened, kind);
    case 'stock':
      return bindStockHead(opened);
    case 'client':
      return bindClientHead(opened);
    case 'visit':
      return bindVisitHead(opened);
  }
};

const orphanNotice = (lines: readonly string[], cut: Cut): Notice => {
  const count = lines.filter((text) => !isBlank(text)).length;
  const header = lines[0] ?? '';
  const { word, wordRun } = readLine(header);
  const typed = header.slice(wordRun.from, wordRun.to);
  const at = spanOf(wordRun.from, Math.max(wordRun.to, wordRun.from + 1));
  const counted = count === 1 ? 'this line belongs' : `these ${count} lines belong`;
  if (cut.why === 'misspelt-header' && cut.near !== undefined) {
    const put = { title: `write ${cut.near}`, text: cut.near, sure: 'likely' as const };
    return {
      rule: 'misspelt-header',
      line: 0,
      at,
      message: `\`${typed}\` is near \`${cut.near}\`; until it is mended ${counted} to nobody.`,
      todo: `Write \`${cut.near}\`.`,
      label: `near: ${cut.near}`,
      put,
    };
  }
  if (cut.why === 'header-shape' && cut.near !== undefined) {
    const put = { title: 'write note before it', text: `note ${typed}`, sure: 'likely' as const };
    return {
      rule: 'header-shape',
      line: 0,
      at,
      message: `\`${typed}\` opens a ${word}, and the line does not go on as one; until it is mended ${counted} to nobody.`,
      todo: HEADER_TODO[cut.near],
      label: 'opens an entry',
      put,
    };
  }
  const first = lines.findIndex((text) => !isBlank(text));
  const text = lines[first] ?? '';
  const start = text.length - text.trimStart().length;
  const where = cut.why === 'after-conflict' ? 'after a merge conflict that holds headers' : 'before any header';
  return {
    rule: 'no-entry',
    line: first,
    at: spanOf(start, Math.max(start + 1, text.trimEnd().length)),
    message: `Standing ${where}, ${counted} to nobody.`,
    todo: 'Write the header they belong to above them, as in `visit 2026-09-04 wren-abbott`.',
  };
};

const HEADER_TODO: Readonly<Record<EntryKind, string>> = {
  salon: 'Write `salon harbour "Harbour Row"`, or `note` before the line.',
  stylist: 'Write `stylist io "Io"`, or `note` before the line.',
  range: 'Write `range cream "Larkfield cream" permanent`, or `note` before the line.',
  product: 'Write `product clay "Peregrine clay" lightener`, or `note` before the line.',
  stock: 'Write `stock 2026-08-01`, or `note` before the line.',
  client: 'Write `client wren-abbott "Wren Abbott"`, or `note` before the line.',
  visit: 'Write `visit 2026-09-04 wren-abbott`, or `note` before the line.',
};

/** Reads one entry from its own lines. Never throws: what cannot be read is kept as an `unread` fact and reported. */
export const readEntry = (lines: readonly string[], cut: Cut): EntryRead => {
  const notices: Notice[] = [];
  const facts: object[] = [];
  const orphan = cut.opens === 'orphan';
  let conflict = false;
  for (let line = 0; line < lines.length; line++) {
    const text = lines[line] ?? '';
    if (conflict || isConflictStart(text)) {
      if (!conflict) {
        notices.push({
          rule: 'merge-conflict',
          line,
          at: spanOf(0, text.length),
          message: 'Two versions stand here side by side; neither is reckoned with.',
          todo: 'Keep the right lines and take out the three marker lines.',
          label: 'conflict begins',
        });
        conflict = true;
      } else if (isConflictEnd(text)) conflict = false;
      facts.push(unread(text, line));
      continue;
    }
    if (isBlank(text)) continue;
    if (orphan) {
      if (line > 0 || cut.why === 'no-entry' || cut.why === 'after-conflict') facts.push(unread(text, line));
    } else if (line > 0 || !isHeader(cut.opens)) facts.push(...bindBody(text, line, cut.opens, notices));
  }
  if (orphan) {
    const header = lines[0] ?? '';
    const keepHeader = cut.why === 'misspelt-header' || cut.why === 'header-shape';
    const onlyConflict = cut.why === 'no-entry' && notices.length > 0 && isConflictStart(header);
    if (!onlyConflict) notices.unshift(orphanNotice(lines, cut));
    const head = keepHeader ? { header: { text: header.trim(), at: spanOf(0, header.length) } } : {};
    return { entry: { kind: 'orphan', ...head, facts } as Entry, notices };
  }
  const headText = lines[0] ?? '';
  const opened = open(headText, 0, readLine(headText).tree, notices);
  const head = headOf(opened, cut.opens);
  return { entry: { kind: cut.opens, ...head, facts: facts as Fact[] } as Entry, notices };
};
