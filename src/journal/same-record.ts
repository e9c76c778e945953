import type { Stood } from './stood.ts';

/** Whether an entry is about the salon or the shelf, so that every client may be read by it. */
export const isShared = ({ entry: { kind } }: Pick<Stood, 'entry'>): boolean =>
  kind !== 'client' && kind !== 'visit' && kind !== 'orphan';

const isSame = (a: unknown, b: unknown, rows: number[]): boolean => {
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return a === b;
  const [own, other] = [Object.entries(a), b as Readonly<Record<string, unknown>>];
  if (own.length !== Object.keys(b).length || Array.isArray(a) !== Array.isArray(b)) return false;
  return own.every(([key, value]) => {
    const now = other[key];
    if (key !== 'line' || typeof value !== 'number' || typeof now !== 'number') return isSame(value, now, rows);
    rows[value] ??= now;
    return rows[value] === now;
  });
};

/**
 * Whether two readings of an entry say the same at the same characters, so that only lines that say nothing came or went
 * between: then the row of each line of the first in the second; undefined otherwise.
 */
export const sameRecord = (before: Stood, now: Stood): readonly number[] | undefined => {
  const rows = [0];
  const isAlike = isSame([before.entry, before.notices, before.cut], [now.entry, now.notices, now.cut], rows);
  // Lines of the record that nothing speaks of stand where they did.
  return isAlike ? Array.from(rows, (row, line) => row ?? line) : undefined;
};
