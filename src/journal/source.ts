import { type Cut, cutEntries, isBlank } from '../records/cut.ts';
import type { Notice } from '../records/notice.ts';
import { readEntry } from '../records/read-entry.ts';
import { type Decoded, decode, linesOf } from '../text/decode.ts';
import { fitted } from '../text/fitted.ts';
import { lasting } from '../text/recently.ts';
import { spanOf } from '../text/span.ts';
import { isShared, sameRecord } from './same-record.ts';
import type { Source, Standing, Stood } from './stood.ts';

export type { Source, Standing, Stood } from './stood.ts';

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
  return { file: path, entry, notices, cut: openingOf(cut) };
};

/** A file's lines; those of many files are a fifth of a large journal, and its text has them all. */
const linesIn = lasting(({ text }: Decoded): readonly string[] => linesOf(text));

type Placed = { readonly stood: Stood; readonly standing: Standing };

/** `rows` is left out where each line of the record stands on its own. */
const standingOf = ({ start, end }: Cut, rows?: readonly number[]): Standing =>
  rows === undefined || rows.every((row, line) => row === line) ? { start, end } : { start, end, rows };

const sourceOf = (path: string, decoded: Decoded, lines: readonly string[], placed: readonly Placed[]): Source => {
  const notice = encodingNotice(decoded, lines);
  const notices = fitted(notice === undefined ? [] : [notice]);
  return {
    path,
    get lines() {
      return linesIn(decoded);
    },
    bom: decoded.bom,
    encoding: decoded.encoding,
    entries: placed.map(({ stood }) => stood),
    standing: placed.map(({ standing }) => standing),
    notices,
  };
};

/** Reads the bytes of one file into its entries. Never throws. */
export const readSource = (path: string, bytes: Uint8Array): Source => {
  const decoded = decode(bytes);
  const lines = linesOf(decoded.text);
  const placed = cutEntries(lines).map((cut) => ({
    stood: stand(path, lines.slice(cut.start, cut.end), cut),
    standing: standingOf(cut),
  }));
  return sourceOf(path, decoded, lines, placed);
};

/** Text of its own: a slice of a file's text would keep the whole of it in memory for as long as the slice lives. */
const ownLines = (lines: readonly string[]): string[] =>
  Buffer.from(lines.join('\n'), 'utf16le').toString('utf16le').split('\n');

const keyOf = (lines: readonly string[], { opens, why }: Pick<Cut, 'opens' | 'why'>): string =>
  `${opens} ${why ?? ''}\n${lines.join('\n')}`;

/** The lines up to the last that says something: blank ones after it are between two entries. */
const spoken = (lines: readonly string[]): readonly string[] => {
  let end = lines.length;
  while (end > 1 && isBlank(lines[end - 1] ?? '')) end--;
  return end === lines.length ? lines : lines.slice(0, end);
};

/** What an entry that all share is known by. */
const headOf = ({ entry }: Stood): string =>
  `${entry.kind} ${'name' in entry ? entry.name?.name : ''} ${'date' in entry ? entry.date?.date : ''}`;

const listed = (all: Map<string, Placed[]>, key: string, one: Placed): void => {
  const same = all.get(key);
  if (same === undefined) all.set(key, [one]);
  else same.push(one);
};

/**
 * Reads a file again after a change. An entry whose lines are as before is the very same object, wherever it stands now,
 * so that whoever compares sees at once what did not change. So is one of those that all share where its record is as
 * before, whatever comments came or went between its lines.
 */
export const rereadSource = (before: Source, bytes: Uint8Array): Source => {
  const { path, lines: were } = before;
  const decoded = decode(bytes);
  const lines = linesOf(decoded.text);
  const known = new Map<string, Placed[]>();
  for (const [index, stood] of before.entries.entries()) {
    const standing = before.standing[index] as Standing;
    listed(known, keyOf(spoken(were.slice(standing.start, standing.end)), stood.cut), { stood, standing });
  }
  const cuts = cutEntries(lines).map((cut) => {
    const text = lines.slice(cut.start, cut.end);
    return { cut, text, same: known.get(keyOf(spoken(text), cut))?.shift() };
  });
  // What is left over of the entries that all share was changed or taken out.
  const left = new Map<string, Placed[]>();
  for (const one of [...known.values()].flat()) if (isShared(one.stood)) listed(left, headOf(one.stood), one);
  const placed = cuts.map(({ cut, text, same }): Placed => {
    if (same !== undefined) return { stood: same.stood, standing: standingOf(cut, same.standing.rows) };
    const stood = stand(path, ownLines(text), cut);
    const near = isShared(stood) ? left.get(headOf(stood)) : undefined;
    for (const [index, one] of (near ?? []).entries()) {
      const rows = sameRecord(one.stood, stood);
      if (rows === undefined) continue;
      near?.splice(index, 1);
      return { stood: one.stood, standing: standingOf(cut, rows) };
    }
    return { stood, standing: standingOf(cut) };
  });
  return sourceOf(path, decoded, lines, placed);
};
