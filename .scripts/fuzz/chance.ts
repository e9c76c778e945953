import { randomFrom } from '../bench/random.ts';

/** What a made case is drawn with: the same seed and number give the same case on every machine. */
export type Chance = {
  /** A whole number from 0 up to, not including, `n`. */
  readonly below: (n: number) => number;
  readonly pick: <T>(list: readonly [T, ...T[]] | readonly T[]) => T;
  /** Whether something comes about that does so in `share` of all cases. */
  readonly comes: (share: number) => boolean;
};

/** The chance of case `index` of a run. Cases of one run all begin at different states. */
export const chanceOf = (seed: number, index: number): Chance => {
  const next = randomFrom((Math.imul(index + 1, 0x9e3779b1) ^ Math.imul(seed, 0x85ebca6b)) >>> 0);
  const below = (n: number): number => Math.floor(next() * n);
  return {
    below,
    pick: <T>(list: readonly T[]): T => list[below(list.length)] as T,
    comes: (share) => next() < share,
  };
};
