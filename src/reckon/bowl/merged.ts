import { add, type Exact } from '../../text/exact.ts';
import { inMillionths } from './finest.ts';

/** So much of something in a bowl, in grams; undefined while that is not known. */
export type Grams<T> = { readonly what: T; readonly grams: Exact | undefined };

/**
 * Puts together what is alike, in the order in which it came first. Where one weight is not known, none is of what is like
 * it.
 */
export const merged = <T>(all: readonly Grams<T>[], keyOf: (what: T) => string): readonly Grams<T>[] => {
  const sums = new Map<string, Grams<T>>();
  for (const one of all) {
    const key = keyOf(one.what);
    const before = sums.get(key);
    if (before === undefined) sums.set(key, one);
    else {
      const grams = before.grams && one.grams && inMillionths(add(before.grams, one.grams));
      sums.set(key, { what: before.what, grams });
    }
  }
  return sums.size === all.length ? all : [...sums.values()];
};
