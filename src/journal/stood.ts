import type { Cut } from '../records/cut.ts';
import type { Notice } from '../records/notice.ts';
import type { Entry } from '../records/schema/entry.ts';
import type { Decoded } from '../text/decode.ts';

/**
 * One file of notes as entries.
 *
 * Reads: the bytes of one file. Gives: its lines and its entries, and a table of where each stands.
 * Runs again: when the bytes change.
 */
export type Source = {
  readonly path: string;
  readonly lines: readonly string[];
  readonly bom: boolean;
  readonly encoding: Decoded['encoding'];
  readonly entries: readonly Stood[];
  /** Where each of the entries stands, in their order; `where.ts` looks it up. */
  readonly standing: readonly Standing[];
  /** What is wrong with the file as a whole; lines counted from the file's first. */
  readonly notices: readonly Notice[];
};

/** Lines of an entry in its file: its header's, counted from 0, and one past its last. */
export type Standing = {
  readonly start: number;
  readonly end: number;
  /** Which line below the header each line of the record stands on now, where comments came or went between them. */
  readonly rows?: readonly number[];
};

/** An entry of a file, wherever in it: it stays the same object while its lines do, though lines be typed above it. */
export type Stood<E extends Entry = Entry> = {
  readonly file: string;
  readonly entry: E;
  readonly notices: readonly Notice[];
  /** What opened it, and why it is an orphan. */
  readonly cut: Pick<Cut, 'opens' | 'why'>;
};
