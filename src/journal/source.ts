import { type Cut, cutEntries } from '../records/cut.ts';
import type { Notice } from '../records/notice.ts';
import { readEntry } from '../records/read-entry.ts';
import type { Entry } from '../records/schema/entry.ts';
import { type Decoded, decode, linesOf } from '../text/decode.ts';
import { fitted } from '../text/fitted.ts';
import { lasting } from '../text/recently.ts';
import { spanOf } from '../text/span.ts';

/**
 * One file of notes as entries.
 *
 * Reads: the bytes of one file. Gives: its lines and its entries, each with the line it starts at.
 * Runs again: when the bytes change.
 */
export type Source = {
  readonly path: string;
  readonly lines: readonly string[];
  readonly bom: boolean;
  readonly encoding: Decoded['encoding'];
  readonly entries: readonly Stood[];
  /** What is wrong with the file as a whole; lines counted from the file's first. */
  readonly notices: readonly Notice[];
};

/** An entry where it stands: the file, its header's line counted from 0, one past its last line. */
export type Stood<E extends Entry = Entry> = {
  readonly file: string;
  readonly line: number;
  readonly end: number;
  readonly entry: E;
  readonly notices: readonly Notice[];
  /** What opened it, and why it is an orphan. */
  readonly cut: Pick<Cut, 'opens' | 'why'>;
};

const encodingNotice = (decoded: Decoded, lines: readonly string[]): Notice | undefined => {
  if (decoded.encoding === 'utf-8') return undefined;
  const accented = lines.findIndex((text) => /[^\0-\x7f]/.test(text));
  // Notes in UTF-16 may have plain letters alone, or none at all.
  const line = Math.max(0, accented >= 0 ? accented : lines.findIndex((text) => text !== ''));
  const text = lines[line] ?? '';
  const first = Math.max(0, text.search(/[^\0-\x7f]/));
  const name = decoded.encoding === 'windows-1252' ? 'Windows-1252' : decoded.encoding.toUpperCase();
  return {
    rule: 'not-utf-8',
    line,
    at: spanOf(first, Math.min(first + 1, text.length)),
    message: `The file is not UTF-8; it is read as ${name}.`,
    todo: 'Save it as UTF-8 in the editor, and look at its accented letters.',
    label: 'first such letter',
  };
};

/** One opening a kind, for all entries that nothing is wrong with. */
const plainly = new Map<Cut['opens'], Stood['cut']>();
const openingOf = ({ opens, why }: Cut): Stood['cut'] => {
  if (why !== undefined) return { opens, why };
  const opening = plainly.get(opens) ?? { opens };
  plainly.set(opens, opening);
  return opening;
};

const stand = (path: string, lines: readonly string[], cut: Cut): Stood => {
  const { entry, notices } = readEntry(lines, cut);
  return { file: path, line: cut.start, end: cut.end, entry, notices, cut: openingOf(cut) };
};

/** A file's lines; those of many files are a fifth of a large journal, and its text has them all. */
const linesIn = lasting(({ text }: Decoded): readonly string[] => linesOf(text));

const sourceOf = (path: string, decoded: Decoded, lines: readonly string[], entries: readonly Stood[]): Source => {
  const notice = encodingNotice(decoded, lines);
  const notices = fitted(notice === undefined ? [] : [notice]);
  return {
    path,
    get lines() {
      return linesIn(decoded);
    },
    bom: decoded.bom,
    encoding: decoded.encoding,
    entries,
    notices,
  };
};

/** Reads the bytes of one file into its entries. Never throws. */
export const readSource = (path: string, bytes: Uint8Array): Source => {
  const decoded = decode(bytes);
  const lines = linesOf(decoded.text);
  const entries = cutEntries(lines).map((cut) => stand(path, lines.slice(cut.start, cut.end), cut));
  return sourceOf(path, decoded, lines, entries);
};

/** Text of its own: a slice of a file's text would keep the whole of it in memory for as long as the slice lives. */
const ownLines = (lines: readonly string[]): string[] =>
  Buffer.from(lines.join('\n'), 'utf16le').toString('utf16le').split('\n');

const keyOf = (lines: readonly string[], { opens, why }: Pick<Cut, 'opens' | 'why'>): string =>
  `${opens} ${why ?? ''}\n${lines.join('\n')}`;

/**
 * Reads a file again after a change. Entries whose lines are as before are taken over, the very same object when they
 * have not moved either, so that whoever compares sees at once what did not change.
 */
export const rereadSource = (before: Source, bytes: Uint8Array): Source => {
  const { path, lines: were } = before;
  const decoded = decode(bytes);
  const lines = linesOf(decoded.text);
  const known = new Map<string, Stood[]>();
  for (const stood of before.entries) {
    const key = keyOf(were.slice(stood.line, stood.end), stood.cut);
    const same = known.get(key);
    if (same === undefined) known.set(key, [stood]);
    else same.push(stood);
  }
  const entries = cutEntries(lines).map((cut): Stood => {
    const text = lines.slice(cut.start, cut.end);
    const same = known.get(keyOf(text, cut));
    const unmoved = same?.findIndex(({ line }) => line === cut.start) ?? -1;
    const [stood] = same?.splice(Math.max(0, unmoved), 1) ?? [];
    if (stood === undefined) return stand(path, ownLines(text), cut);
    return stood.line === cut.start ? stood : { ...stood, line: cut.start, end: cut.end };
  });
  return sourceOf(path, decoded, lines, entries);
};
