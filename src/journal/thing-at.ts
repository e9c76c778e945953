import type { Entry, Fact } from '../records/schema/entry.ts';
import { fromOf, toOf } from '../text/span.ts';
import { type Named, namesIn } from './named.ts';
import type { Source, Standing, Stood } from './stood.ts';

/**
 * What stands at a place of a file: for whoever points at it.
 *
 * Reads: one file as entries. Gives: the entry, its fact, the name. Runs again: nothing is kept here.
 */
export type Thing = {
  readonly stood: Stood;
  /** The line as its record counts it, from the header, which is 0; undefined on one that came between since. */
  readonly line?: number;
  readonly fact?: Fact;
  /** The innermost name that the place is in, or touches. */
  readonly named?: Named;
};

/** The fact on a line of an entry, counted from its header; undefined where the line says nothing, and at the header. */
export const factAt = <E extends Entry>({ facts }: E, line: number): E['facts'][number] | undefined =>
  facts.find((fact) => fact.line === line);

/** The index of the entry that a line of the file stands in, by halves. */
const entryIndex = (standing: readonly Standing[], row: number): number | undefined => {
  let [low, high] = [0, standing.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((standing[middle]?.end ?? 0) <= row) low = middle + 1;
    else high = middle;
  }
  const found = standing[low];
  return found === undefined || found.start > row ? undefined : low;
};

const lineIn = ({ start, rows }: Standing, row: number): number | undefined => {
  if (rows === undefined) return row - start;
  const line = rows.indexOf(row - start);
  return line < 0 ? undefined : line;
};

/** What stands at a line and a column of a file, both counted from 0, columns in UTF-16 units; undefined outside entries. */
export const thingAt = ({ entries, standing }: Source, row: number, column: number): Thing | undefined => {
  const index = entryIndex(standing, row);
  const [stood, stands] = index === undefined ? [] : [entries[index], standing[index]];
  if (stood === undefined || stands === undefined) return undefined;
  const line = lineIn(stands, row);
  if (line === undefined) return { stood };
  const fact = factAt(stood.entry, line);
  const [named] = namesIn(stood.entry)
    .filter((one) => one.line === line && fromOf(one.at) <= column && column <= toOf(one.at))
    .toSorted((a, b) => toOf(a.at) - fromOf(a.at) - (toOf(b.at) - fromOf(b.at)));
  return { stood, line, ...(fact && { fact }), ...(named && { named }) };
};
