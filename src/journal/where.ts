import { isBlank } from '../records/cut.ts';
import { type Sentence, written } from '../text/sentence.ts';
import type { FilePlace, Ground, Line, Place } from '../text/span.ts';
import type { Journal } from './model.ts';
import type { Source, Standing } from './stood.ts';

/**
 * Where entries stand, for whoever prints: the one way from a line of an entry to a line of its file.
 *
 * Reads: the files' own tables, as they are now. Runs again: nothing is kept here.
 */
export type Files = Pick<Journal, 'sources'>;

const tables = new WeakMap<Source, ReadonlyMap<Ground, Standing>>();

const tableOf = (source: Source): ReadonlyMap<Ground, Standing> => {
  let table = tables.get(source);
  if (table === undefined) {
    table = new Map(source.entries.map((stood, index) => [stood, source.standing[index] as Standing]));
    tables.set(source, table);
  }
  return table;
};

/**
 * Where an entry stands in its file: the line of its header, counted from 0, and one past its last line.
 * @throws Error when no such entry stands in the file: it was taken for one of now and is not.
 */
export const standingOf = ({ sources }: Files, ground: Ground): Standing => {
  const source = sources.get(ground.file);
  const standing = source && tableOf(source).get(ground);
  if (standing === undefined) throw new Error(`an entry is asked for that does not stand in ${ground.file}`);
  return standing;
};

const rowIn = ({ start, rows }: Standing, line: number): number => start + (rows?.[line] ?? line);

/** The line of the file, counted from 0. @throws Error as `standingOf` does. */
export const rowOf = (files: Files, { in: ground, line }: Line): number =>
  ground.isWhole === true ? line : rowIn(standingOf(files, ground), line);

/** Where in its file a place is. @throws Error as `standingOf` does. */
export const whereIs = (files: Files, place: Place): FilePlace => ({
  file: place.in.file,
  line: rowOf(files, place),
  at: place.at,
});

/** The text of a line as it stands in its file; '' when there is none. */
export const lineText = (files: Files, line: Line): string =>
  files.sources.get(line.in.file)?.lines[rowOf(files, line)] ?? '';

/** The lines of an entry as they stand in its file. */
export const entryLines = (files: Files, ground: Ground): readonly string[] => {
  const { start, end } = standingOf(files, ground);
  return files.sources.get(ground.file)?.lines.slice(start, end) ?? [];
};

/** The lines of an entry that say something, in order. */
export const spokenLines = (files: Files, ground: Ground): readonly string[] =>
  entryLines(files, ground).filter((line) => !isBlank(line));

/** The lines of an entry as its record counts them: without the comments that came between since it was read. */
export const recordLines = ({ lines }: Source, { start, end, rows }: Standing): readonly string[] =>
  rows === undefined ? lines.slice(start, end) : rows.map((row) => lines[start + row] ?? '');

/** The file's own name and the line, as an editor counts it: `colour.bowl:64`. */
const nameIn = (files: Files, line: Line): string => {
  const { file } = line.in;
  return `${file.slice(Math.max(file.lastIndexOf('/'), file.lastIndexOf('\\')) + 1)}:${rowOf(files, line) + 1}`;
};

/** A sentence with its lines named as they stand now. */
export const inWords = (files: Files, said: Sentence): string => written(said, (line) => nameIn(files, line));

/** A line as reports name it, by its file's whole path: `notes/colour.bowl:64`. */
export const pathAndLine = (files: Files, line: Line): string => `${line.in.file}:${rowOf(files, line) + 1}`;
