/**
 * A run of characters within one line, packed in one number: start × 2^22 + length, in UTF-16 units.
 * Packing keeps a record's values small; positions within a line do not move when lines above it change.
 */
export type At = number;

const STEP = 0x400000;

/** Longest line that is read, in UTF-16 units; a longer one is kept as typed and reported. */
export const LONGEST_LINE = 100_000;

/** Packs the run from `from` up to, not including, `to`. */
export const spanOf = (from: number, to: number): At => from * STEP + (to - from);

/** First character of the run, counted from 0. */
export const fromOf = (at: At): number => Math.floor(at / STEP);

/** One past the last character of the run. */
export const toOf = (at: At): number => fromOf(at) + (at % STEP);

/** The run from the start of `a` to the end of `b`. */
export const joinSpans = (a: At, b: At): At => spanOf(fromOf(a), toOf(b));

/** The characters of `line` that `at` stands for. */
export const sliceOf = (line: string, at: At): string => line.slice(fromOf(at), toOf(at));

/** What lines are counted from: an entry, or a file as a whole. One is the same as another by being the same object. */
export type Ground = { readonly file: string; readonly isWhole?: true };

/** A line of an entry, counted from its header, which is 0. It stays the same when the entry moves in its file. */
export type Line = { readonly in: Ground; readonly line: number };

/** A run of characters in a line of an entry; `journal/where.ts` alone says where in the file that is. */
export type Place = Line & { readonly at: At };

/** A run of characters in a file as it stands now: `line` is counted from 0. For whoever prints. */
export type FilePlace = { readonly file: string; readonly line: number; readonly at: At };

/** A file as what its lines are counted from. */
export const wholeFile = (file: string): Ground => ({ file, isWhole: true });

/** Whether two places are on one line. */
export const sameLine = (a: Line, b: Line): boolean => a.in === b.in && a.line === b.line;
