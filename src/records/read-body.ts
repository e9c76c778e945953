import { plainWord, readLine } from '../notation/read-line.ts';
import type { Notice } from '../notation/reading-rules.ts';
import { BODY_WORDS, type EntryKind, isBodyWord } from '../notation/words.ts';
import { LONGEST_LINE, spanOf } from '../text/span.ts';
import { BINDERS, type Fields } from './bind/body.ts';
import { bindCaution } from './bind/client-lines.ts';
import { type Cursor, type Opened, open } from './bind/cursor.ts';
import { bindFree } from './bind/visit-lines.ts';
import { meantLine, nearWords } from './meant-line.ts';
import type { Unread } from './schema/shelf.ts';

/**
 * One body line as its facts.
 *
 * Reads: the text of the line and the kind of its entry, nothing else, so a line that was read before is not bound
 * again: hands repeat themselves (`off 15:15 A`, `charge foils 95.00`).
 */

/** A line kept as typed. */
export const unread = (text: string, line: number): Unread => ({ word: 'unread', line, typed: text.trim() });

const underOf = (word: string): readonly EntryKind[] => (isBodyWord(word) ? BODY_WORDS[word].under : []);
const list = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} or ${words.at(-1)}`;

/** A first word that is not of the notation, or not of this entry. */
const strange = (text: string, line: number, kind: EntryKind): Notice => {
  const { word, wordRun } = readLine(text);
  const start = text.length - text.trimStart().length;
  const whole = spanOf(start, Math.max(text.trimEnd().length, start + 1));
  const at = word === '' ? whole : spanOf(wordRun.from, wordRun.to);
  const meant = meantLine(text, kind);
  if (meant !== undefined) return { rule: 'unknown-word', line, at: whole, label: 'kept as typed', ...meant };
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
  const near = nearWords(word, kind);
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
export const bindBody = (text: string, line: number, kind: EntryKind, notices: Notice[]): object[] => {
  const plain = plainWord(text);
  const known = plain !== undefined && isBound(plain) && underOf(plain).includes(kind) ? table.get(text) : undefined;
  if (known !== undefined) return standing(known, line, notices);
  const { word, wordRun } = readLine(text);
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
  return standing(bindOnce(text), line, notices);
};

/** A line bound once, where it stands now. */
const standing = (bound: BoundLine, line: number, notices: Notice[]): object[] => {
  for (const notice of bound.notices) notices.push({ ...notice, line });
  return bound.facts.map((fact) => ({ ...fact, line }));
};

/** A line bound by itself, as if it were line 0 of its entry: its facts share their values with every equal line. */
type BoundLine = { readonly facts: readonly object[]; readonly notices: readonly Notice[] };

/** Most lines kept; with more distinct ones than this the table starts anew. */
const TABLE_LIMIT = 50_000;
const table = new Map<string, BoundLine>();

/** Longer lines are prose or damage, and seldom come twice. */
const REPEATED = 400;

const bindOnce = (text: string): BoundLine => {
  if (text.length > REPEATED) return bindFresh(text);
  let bound = table.get(text);
  if (bound === undefined) {
    bound = bindFresh(text);
    if (table.size >= TABLE_LIMIT) table.clear();
    table.set(text, bound);
  }
  return bound;
};

/** Words that say something when they stand alone. */
const COMPLETE: ReadonlySet<string> = new Set([
  ...['heat', 'wash', 'rinse', 'dry', 'cut', 'reaction', 'stopped', 'declined', 'paid'],
]);

const saysNothing = ({ groups, closing }: Opened): boolean =>
  groups.every((group) => group.length === 0) && closing.says === undefined;

const bindFresh = (text: string): BoundLine => {
  const { word, wordRun, tree } = readLine(text);
  const notices: Notice[] = [];
  const opened = open(text, 0, tree, notices);
  const fields: Fields = isBound(word) ? BINDERS[word](opened, word) : undefined;
  const { closing, cursor } = opened;
  const rest = cursor.rest === undefined ? {} : { rest: cursor.rest };
  const all = fields === undefined ? [] : Array.isArray(fields) ? (fields as object[]) : [fields as object];
  if (notices.length === 0 && saysNothing(opened) && isBodyWord(word) && !COMPLETE.has(word))
    notices.push({
      rule: 'nothing-said',
      line: 0,
      at: spanOf(wordRun.from, wordRun.to),
      message: `The \`${word}\` line says nothing yet.`,
      todo: 'Write it out, or take the line away.',
    });
  if (all.length > 0) return { facts: all.map((one) => ({ word, line: 0, ...one, ...closing, ...rest })), notices };
  // A binder that gives nothing has said why; should one forget, the line is still reported.
  if (notices.length === 0)
    notices.push({
      rule: 'nothing-said',
      line: 0,
      at: spanOf(wordRun.from, text.length),
      message: `The \`${word}\` line is not understood.`,
      label: 'kept as typed',
    });
  return { facts: [unread(text, 0)], notices };
};

const isBound = (word: string): word is keyof typeof BINDERS => Object.hasOwn(BINDERS, word);
