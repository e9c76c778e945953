/** The one empty list: a journal's records hold hundreds of thousands, and nobody adds to a record. */
const NONE: never[] = [];
Object.freeze(NONE);

/** A list for a record, with no room to grow: one that was pushed to holds room for 17 at least. */
export const fitted = <T>(list: T[]): T[] => (list.length === 0 ? NONE : list.slice());

/** One list after another, for a record. */
export const joined = <T>(first: T[], second: T[]): T[] =>
  first.length === 0 ? second : second.length === 0 ? first : first.concat(second);
