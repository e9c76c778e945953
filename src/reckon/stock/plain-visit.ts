import { isDate } from '../../text/dates.ts';
import { fold } from '../../text/fold.ts';
import type { Bears } from './lot-bearing.ts';

/**
 * A visit typed so plainly that what it put on the client follows from each bowl’s own lines, whatever else it holds.
 * Most visits are; a large journal repeats the same lines thousands of times, and each is then worked out once.
 *
 * Reads: the text of one visit. Gives: its client, day and the bowls that bear on a lot. Runs again: when it changes.
 */
export type PlainVisit = {
  readonly client: string;
  readonly date: string;
  /** What its header says of hand and salon. */
  readonly tail: string;
  readonly bowls: readonly PlainBowl[];
};

/** The lines of one bowl, and where each stands, counted from the visit’s header. */
export type PlainBowl = { readonly text: string; readonly lines: readonly number[] };

const NAME = '\\p{L}[\\p{L}\\p{N}]*(?:-\\p{L}[\\p{L}\\p{N}]*)*';
const HEAD = new RegExp(
  `^visit (\\d{4}-\\d{2}-\\d{2})(?: \\d{1,2}:\\d{2})? (?!(?:by|at)(?: |$))(${NAME})((?: by ${NAME})?(?: at ${NAME})?)\\r?$`,
  'u',
);

const BOWL = /^ +([A-Za-z]\d*)(?=[ =]|$)/;

/** How a line of a visit can touch the client, by its first word: not at all, in a bowl, or by itself. */
const WORDS: ReadonlyMap<string, 'idle' | 'left' | 'bowl' | 'loose'> = new Map([
  ...['aim', 'want', 'start', 'regrowth', 'zone', 'place', 'leave', 'on', 'check', 'off', 'heat', 'reaction'].map(
    (word) => [word, 'idle'] as const,
  ),
  ...['stopped', 'declined', 'result', 'photo', 'care', 'note', 'charge', 'deposit', 'paid', 'split', 'redo'].map(
    (word) => [word, 'idle'] as const,
  ),
  ...['about', 'asked', 'call', 'next', 'caution', 'hold', 'because'].map((word) => [word, 'idle'] as const),
  ['left', 'left'],
  ...['bowl', 'plus', 'weighed'].map((word) => [word, 'bowl'] as const),
  ...['fit', 'wash', 'rinse', 'dry', 'cut', 'test'].map((word) => [word, 'loose'] as const),
]);

const SPACE = 32;
const TAB = 9;
const RETURN = 13;
const HASH = 35;
const SMALL_A = 97;
const SMALL_Z = 122;

type Draft = { readonly name: string; bears: boolean; mixed: boolean; text: string; readonly lines: number[] };

/** Reads a visit that is plain; undefined for any other, which is for the reader of the notation. */
export const plainVisit = (text: string, bears: Bears): PlainVisit | undefined => {
  let start = text.indexOf('\n');
  const [, date = '', client = '', tail = ''] = HEAD.exec(start < 0 ? text : text.slice(0, start)) ?? [];
  if (client.length < 2 || !isDate(date)) return undefined;
  // A handful at most, so a list is quicker than a table.
  const bowls: Draft[] = [];
  let hasLeft = false;
  for (let line = 1; start >= 0; line++) {
    const begin = start + 1;
    start = text.indexOf('\n', begin);
    const end = start < 0 ? text.length : start;
    let from = begin;
    for (let code = text.charCodeAt(from); code === SPACE || code === TAB; code = text.charCodeAt(from)) from++;
    const first = text.charCodeAt(from);
    if (from >= end || first === HASH || (first === RETURN && from + 1 === end)) continue;
    let to = from;
    for (let code = first; code >= SMALL_A && code <= SMALL_Z; code = text.charCodeAt(to)) to++;
    const word = text.slice(from, to);
    const kind = text.charCodeAt(to) === SPACE ? WORDS.get(word) : undefined;
    if (kind === 'idle') continue;
    if (kind === 'left') {
      hasLeft = true;
      continue;
    }
    if (kind === undefined) return undefined;
    const stop = text.charCodeAt(end - 1) === RETURN ? end - 1 : end;
    const rest = text.slice(to, stop);
    const isSought = bears(word, rest);
    if (kind === 'loose') {
      if (isSought) return undefined;
      continue;
    }
    const name = BOWL.exec(rest)?.[1]?.toUpperCase();
    if (name === undefined) return undefined;
    const typed = text.slice(begin, stop);
    const bowl = bowls.find((one) => one.name === name);
    if (bowl === undefined) bowls.push({ name, bears: isSought, mixed: word === 'bowl', text: typed, lines: [line] });
    else {
      bowl.bears ||= isSought;
      bowl.mixed ||= word === 'bowl';
      bowl.text += `\n${typed}`;
      bowl.lines.push(line);
    }
  }
  // Lines that speak of a bowl which nothing mixes make one that can be anything.
  if ((hasLeft && bowls.length === 0) || !bowls.every(({ mixed }) => mixed)) return undefined;
  return { client: fold(client), date, tail, bowls: bowls.filter((bowl) => bowl.bears) };
};
