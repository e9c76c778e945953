import type { Entry, Fact } from '../schema/entry.ts';

/**
 * A record without its places: what it says, wherever it stands. What was read fits it, and so does what is made anew.
 */
export type Said<T> = T extends readonly (infer E)[]
  ? readonly Said<E>[]
  : T extends object
    ? { readonly [K in keyof T as IsPlace<K, T[K]> extends true ? never : K]: Said<T[K]> }
    : T;

/** `at` is a place where it is a number; on a `reorder` line it is an amount. */
type IsPlace<K, V> = K extends 'line' ? true : K extends 'at' ? (V extends number ? true : false) : false;

/** What the fact of one first word says. */
export type SaidFact<W extends Fact['word']> = Said<Extract<Fact, { word: W }>>;

/** What the head of an entry says, without its facts. */
export type SaidHead<K extends Entry['kind']> = Omit<Said<Extract<Entry, { kind: K }>>, 'kind' | 'facts'>;

/** Things of a line with one space between them; what there is none of is left out. */
export const spaced = (...things: readonly (string | undefined | false)[]): string =>
  things.filter((thing) => thing !== undefined && thing !== false && thing !== '').join(' ');
