import { type ReadLine, readLine } from '../notation/read-line.ts';
import type { Notice } from '../notation/reading-rules.ts';
import { BODY_WORDS, type EntryKind, isBodyWord, RENAMED_WORDS } from '../notation/words.ts';
import { fitted } from '../text/fitted.ts';
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
  const now = RENAMED_WORDS.get(word);
  if (now !== undefined)
    return {
      rule: 'unknown-word',
      line,
      at,
      message: `The word \`${word}\` is \`${now}\` now.`,
      todo: `Write \`${now}\` in its place; the rest of the line stays as it is.`,
      label: `now: ${now}`,
      put: { title: `write ${now}`, text: now, sure: 'certain' },
    };
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

/**
 * Binds one body line and adds its facts: usually one, several where a line lists charges, an unread one where it fails.
 */
export const bindBody = (text: string, line: number, kind: EntryKind, facts: object[], notices: Notice[]): void => {
  const known = table.get(text);
  if (known?.under.includes(kind)) {
    stand(known, line, facts, notices);
    return;
  }
  const read = readLine(text);
  const { word } = read;
  const fault = faultOf(text, line, word, kind);
  if (fault !== undefined) {
    notices.push(fault);
    facts.push(unread(text, line));
  } else if (word === 'aim' || word === 'note' || word === 'care' || word === 'caution' || word === 'photo')
    facts.push(bindFreeLine(text, line, word, read.wordRun.to, notices));
  else stand(bindOnce(text, read), line, facts, notices);
};

/** Why a line is kept as typed before its word is looked at any closer. */
const faultOf = (text: string, line: number, word: string, kind: EntryKind): Notice | undefined => {
  if (text.length > LONGEST_LINE) {
    const kilobytes = Math.round(text.length / 1000);
    return {
      rule: 'line-too-long',
      line,
      at: spanOf(0, 80),
      message: `The line has ${kilobytes} thousand characters; the longest that is read has ${LONGEST_LINE / 1000} thousand.`,
      todo: 'Break it into lines.',
      label: 'kept as typed',
    };
  }
  const nul = text.indexOf('\0');
  if (nul >= 0)
    return {
      rule: 'nul-byte',
      line,
      at: spanOf(nul, nul + 1),
      message: 'The line holds a NUL byte, which no editor types.',
      todo: 'Take it out, and check the file against its last copy.',
      label: 'kept as typed',
    };
  return underOf(word).includes(kind) ? undefined : strange(text, line, kind);
};

/** A line bound by itself, without its place: what its facts say is shared with every equal line. */
type BoundLine = {
  readonly word: string;
  readonly under: readonly EntryKind[];
  readonly fields: readonly object[];
  readonly closing: object;
  readonly rest: object;
  /** As if it were line 0 of its entry. */
  readonly notices: readonly Notice[];
};

/** Adds the facts of a bound line where it stands now. */
const stand = (
  { word, fields, closing, rest, notices: said }: BoundLine,
  line: number,
  facts: object[],
  notices: Notice[],
): void => {
  for (const notice of said) notices.push({ ...notice, line });
  for (const one of fields) facts.push({ word, line, ...one, ...closing, ...rest });
};

/** Most lines kept; with more distinct ones than this the table starts anew. */
const TABLE_LIMIT = 50_000;
const table = new Map<string, BoundLine>();

/** Longer lines are prose or damage, and seldom come twice. */
const REPEATED = 400;

const bindOnce = (text: string, read: ReadLine): BoundLine => {
  const bound = bindFresh(text, read);
  if (text.length > REPEATED) return bound;
  if (table.size >= TABLE_LIMIT) table.clear();
  table.set(text, bound);
  return bound;
};

/** Words that say something when they stand alone. */
const COMPLETE: ReadonlySet<string> = new Set([
  ...['heat', 'wash', 'rinse', 'dry', 'cut', 'reaction', 'stopped', 'declined', 'paid'],
]);

const saysNothing = ({ groups, closing }: Opened): boolean =>
  groups.every((group) => group.length === 0) && closing.says === undefined;

const NOTHING: object = {};

const bindFresh = (text: string, { word, wordRun, tree }: ReadLine): BoundLine => {
  const notices: Notice[] = [];
  const opened = open(text, 0, tree, notices);
  const bound: Fields = isBound(word) ? BINDERS[word](opened, word) : undefined;
  const { closing, cursor } = opened;
  const fields = bound === undefined ? [] : Array.isArray(bound) ? (bound as object[]) : [bound as object];
  if (notices.length === 0 && saysNothing(opened) && !COMPLETE.has(word))
    notices.push({
      rule: 'nothing-said',
      line: 0,
      at: spanOf(wordRun.from, wordRun.to),
      message: `The \`${word}\` line says nothing yet.`,
      todo: 'Write it out, or take the line away.',
    });
  const under = underOf(word);
  if (fields.length > 0) {
    const rest = cursor.rest === undefined ? NOTHING : { rest: cursor.rest };
    return { word, under, fields, closing, rest, notices: fitted(notices) };
  }
  // A binder that gives nothing has said why; should one forget, the line is still reported.
  if (notices.length === 0)
    notices.push({
      rule: 'nothing-said',
      line: 0,
      at: spanOf(wordRun.from, text.length),
      message: `The \`${word}\` line is not understood.`,
      label: 'kept as typed',
    });
  const typed = { typed: text.trim() };
  return { word: 'unread', under, fields: [typed], closing: NOTHING, rest: NOTHING, notices: fitted(notices) };
};

const isBound = (word: string): word is keyof typeof BINDERS => Object.hasOwn(BINDERS, word);
