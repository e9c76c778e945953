import { fold } from '../text/fold.ts';
import { nearNames } from '../text/near.ts';
import { isKind, KINDS } from '../trade/kinds.ts';
import { isZone } from '../trade/zones.ts';
import type { Item, LineTree } from './line-tree.ts';
import { isBlank, plainWord, type ReadLine, readLine } from './read-line.ts';
import { type EntryKind, formOf, HEADERS, isBodyWord, isHeader, SOFT_WORDS } from './words.ts';

/**
 * Cutting a file into entries.
 *
 * Reads: the lines of one file. Gives: runs of lines, each opened by a header or an orphan with the reason.
 * Runs again: when the file changes.
 */
export type Cut = {
  readonly start: number;
  /** One past the last line. */
  readonly end: number;
  readonly opens: EntryKind | 'orphan';
  readonly why?: 'no-entry' | 'misspelt-header' | 'header-shape' | 'after-conflict';
  /** The header that a misspelt one is near to. */
  readonly near?: EntryKind;
};

export const isConflictStart = (line: string): boolean => line.startsWith('<') && /^<{7}(?:[\s\u200b]|$)/.test(line);
export const isConflictEnd = (line: string): boolean => /^>{7}(?:[\s\u200b]|$)/.test(line);

const isWordLike = (item: Item | undefined): boolean => item?.kind === 'word';
const isDated = ({ kind, from, to }: Item, text: string): boolean =>
  kind === 'date' ||
  kind === 'month' ||
  kind === 'chain' ||
  (kind === 'slashed' && /^\d+\/\d+\/\d+$/.test(text.slice(from, to)));
const isNearKind = (text: string, item: Item): boolean => {
  const word = fold(text.slice(item.from, item.to));
  return isKind(word) || nearNames(word, KINDS, 1).length > 0;
};

/** Whether a line has what the header needs, so that pasted prose which begins with such a word opens nothing. */
export const hasShape = (kind: EntryKind, text: string, tree: LineTree): boolean => {
  if (kind === 'visit' || kind === 'stock')
    return tree.groups.some((group) => group.some((item) => isDated(item, text)));
  const items = tree.groups.flat().filter((item) => item.kind !== 'stop');
  const words = items.filter(isWordLike);
  const quoted = items.some((item) => item.kind === 'text' || item.kind === 'open');
  if (!isWordLike(items[0])) return false;
  if (kind === 'range' || kind === 'product') {
    const [name, ...after] = words;
    if (quoted || after.length === 0) return true;
    const prose = name !== undefined && SOFT_WORDS.has(fold(text.slice(name.from, name.to)));
    return !prose && after.slice(0, 2).some((item) => isNearKind(text, item));
  }
  if (kind === 'stylist') return quoted || words.length === 1 || (words.length === 3 && items.length === 3);
  return quoted ? items.length <= 3 : items.length === 1;
};

/** The header that an unknown first word is near to, when the rest of its line has that header's shape. */
const nearHeader = (text: string, read: ReadLine): EntryKind | undefined =>
  // `fringe burning` tells of a place, and is no slip of `range`.
  isZone(read.word)
    ? undefined
    : nearNames(read.word, HEADERS).find(
        (kind): kind is EntryKind => isHeader(kind) && hasShape(kind, text, read.tree),
      );

type Opening = Pick<Cut, 'opens' | 'why' | 'near'>;

/** What a line opens, if anything. */
const openingOf = (text: string): Opening | undefined => {
  const plain = plainWord(text);
  if (plain !== undefined && isBodyWord(plain)) return undefined;
  const read = readLine(text);
  if (isHeader(read.word))
    return hasShape(read.word, text, read.tree)
      ? { opens: read.word }
      : { opens: 'orphan', why: 'header-shape', near: read.word };
  if (read.word === '' || formOf(read.word) !== undefined) return undefined;
  const near = nearHeader(text, read);
  return near && { opens: 'orphan', why: 'misspelt-header', near };
};

/** Whether the first word can open an entry at all: the cheap question, asked of every line. */
const FIRST = /^[\s\ufeff\u200b]*(\p{L}[\p{L}\p{M}\p{N}'’_.-]*)/u;

/** Whether any line of a cut holds more than a comment. */
const says = (lines: readonly string[], { start, end }: Cut): boolean => {
  for (let index = start; index < end; index++) if (!isBlank(lines[index] ?? '')) return true;
  return false;
};

/** Cuts the lines of a file into entries. Lines before any header are an orphan; blank ones before it are nobody's. */
export const cutEntries = (lines: readonly string[]): Cut[] => {
  const cuts: Cut[] = [];
  let current: { start: number; opening: Opening } | undefined;
  const close = (end: number): void => {
    if (current !== undefined) cuts.push({ start: current.start, end, ...current.opening });
    current = undefined;
  };
  let inConflict = false;
  let headerInside = false;
  for (let index = 0; index < lines.length; index++) {
    const text = lines[index] ?? '';
    if (inConflict) {
      if (isConflictEnd(text)) {
        inConflict = false;
        // Which entry the lines after the block belong to is for whoever settles the conflict to say.
        if (headerInside) {
          close(index + 1);
          current = { start: index + 1, opening: { opens: 'orphan', why: 'after-conflict' } };
        }
      } else if (isHeader(fold(FIRST.exec(text)?.[1] ?? ''))) headerInside = true;
      continue;
    }
    if (isConflictStart(text)) {
      inConflict = true;
      headerInside = false;
      current ??= { start: index, opening: { opens: 'orphan', why: 'no-entry' } };
      continue;
    }
    if (isBlank(text)) continue;
    const opening = openingOf(text);
    if (opening !== undefined) {
      close(index);
      current = { start: index, opening };
    } else current ??= { start: index, opening: { opens: 'orphan', why: 'no-entry' } };
  }
  close(lines.length);
  return cuts.filter((cut) => says(lines, cut));
};
