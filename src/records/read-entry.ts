import { isBlank, readLine } from '../notation/read-line.ts';
import type { Notice } from '../notation/reading-rules.ts';
import { type EntryKind, isHeader } from '../notation/words.ts';
import { fitted } from '../text/fitted.ts';
import { spanOf } from '../text/span.ts';
import { type Opened, open } from './bind/cursor.ts';
import { bindClientHead, bindSalon, bindShelfHead, bindStockHead, bindStylist, bindVisitHead } from './bind/headers.ts';
import { type Cut, isConflictEnd, isConflictStart } from './cut.ts';
import { bindBody, unread } from './read-body.ts';
import type { Entry, Fact } from './schema/entry.ts';

/**
 * One entry, bound: its record, with lines counted from its header, and what is wrong with its typing.
 *
 * Reads: the lines of one entry, nothing else. Runs again: when one of them changes.
 */
export type EntryRead = { readonly entry: Entry; readonly notices: readonly Notice[] };

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
  const { wordRun } = readLine(header);
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
    const note = { title: 'write note before it', text: `note ${typed}`, sure: 'likely' as const };
    return {
      rule: 'header-shape',
      line: 0,
      at,
      label: 'opens an entry',
      put: note,
      ...headerShape(cut.near, header, counted),
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
    todo: `Write the header above ${count === 1 ? 'it' : 'them'}, as in \`visit 2026-09-04 wren-abbott\`.`,
  };
};

/** Her own words as the short name and the full name of what a header opens. */
const namesIn = (words: string): { short: string; full: string } | undefined => {
  const full = words.replace(/["“”„«»]/g, '').trim();
  const parts = full.match(/[\p{L}\p{M}\p{N}'’]+/gu) ?? [];
  if (parts.length < 2 || parts.length > 4 || /[^\p{L}\p{M}\p{N}'’\s-]/u.test(full)) return undefined;
  return { short: parts.join('-').toLowerCase().replace(/['’]/g, ''), full };
};

/** What a header lacks, in the words of its line where they can be its names. */
const headerShape = (kind: EntryKind, header: string, counted: string): Pick<Notice, 'message' | 'todo' | 'put'> => {
  const { word, wordRun } = readLine(header);
  const rest = header.slice(wordRun.to).trim();
  const until = `; until it is mended ${counted} to nobody.`;
  if (kind === 'visit' || kind === 'stock') {
    const who = rest.replace(/["“”„«»]/g, '').replace(/\s+by\s.*$/iu, '');
    const named = kind === 'visit' && rest !== '' && /^[\p{L}\p{M}\p{N}'’\s-]{1,40}$/u.test(who);
    return {
      message: `A ${word} needs its day, and the line gives none${until}`,
      todo: `Write \`${kind} 2026-09-04${kind === 'visit' ? ` ${named ? (namesIn(who)?.short ?? who) : 'wren-abbott'}` : ''}\` with the day it was, or \`note\` before the line.`,
    };
  }
  const quoted = /["“„«]([^"“”»]+)["”“»]\s*(.*)$/u.exec(rest);
  // Pasted prose begins with such a word too (`client wants it lighter`); a person's name has capitals.
  const isName = /^(?:\p{Lu}[\p{L}\p{M}'’-]*\s*)+$/u.test(rest);
  const names = quoted !== null ? namesIn(quoted[1] ?? '') : isName ? namesIn(rest) : undefined;
  if (names === undefined)
    return {
      message: `\`${header.slice(wordRun.from, wordRun.to)}\` opens a ${word}, and the line does not go on as one${until}`,
      todo: HEADER_TODO[kind],
    };
  const tail = quoted?.[2] === undefined || quoted[2] === '' ? '' : ` ${quoted[2].trim()}`;
  const meant = `${kind} ${names.short} "${names.full}"${tail}`;
  return {
    message: `A ${word} needs a short name first${until}`,
    todo: `Write \`${meant}\`, or \`note\` before the line.`,
    put: { title: `write ${meant}`, text: meant, sure: 'likely', at: spanOf(wordRun.from, header.trimEnd().length) },
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
    } else if (line > 0 || !isHeader(cut.opens)) bindBody(text, line, cut.opens, facts, notices);
  }
  if (orphan) {
    const header = lines[0] ?? '';
    const keepHeader = cut.why === 'misspelt-header' || cut.why === 'header-shape';
    const onlyConflict = cut.why === 'no-entry' && notices.length > 0 && isConflictStart(header);
    if (!onlyConflict) notices.unshift(orphanNotice(lines, cut));
    const head = keepHeader ? { header: { text: header.trim(), at: spanOf(0, header.length) } } : {};
    return { entry: { kind: 'orphan', ...head, facts } as Entry, notices: fitted(notices) };
  }
  const headText = lines[0] ?? '';
  const opened = open(headText, 0, readLine(headText).tree, notices);
  const head = headOf(opened, cut.opens);
  return { entry: { kind: cut.opens, ...head, facts: fitted(facts as Fact[]) } as Entry, notices: fitted(notices) };
};
