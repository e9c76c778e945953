import { grouped, mean } from './grouped.ts';

/** Variances of log minutes: of one place on one visit about its head's pace, and of heads about the salon's. */
export type Variances = { readonly noise: number; readonly spread: number };

/**
 * The variances taken before there is anything to go on: one visit in three differs by more than 15 % from the head's
 * own pace, one head in three by more than 20 % from the salon's. And for how many visits, or heads, that counts.
 * Choices, no source.
 */
export const USUAL = { noise: 0.15 ** 2, noiseCounts: 6, spread: 0.2 ** 2, spreadCounts: 4 } as const;

const squares = (values: readonly number[]): number => {
  const middle = mean(values);
  return values.reduce((sum, value) => sum + (value - middle) ** 2, 0);
};

/**
 * Noise within heads and spread between them: the unbiased estimates of a one-way analysis of variance with groups of
 * unequal size (textbook, from memory), each averaged with what is usual by its degrees of freedom.
 */
export const variancesOf = (places: readonly { readonly client: string; readonly left: number }[]): Variances => {
  const heads = [...grouped(places, ({ client }) => client).values()].map((own) => own.map(({ left }) => left));
  const all = heads.flat();
  const free = { within: all.length - heads.length, between: heads.length - 1 };
  const within = heads.reduce((sum, own) => sum + squares(own), 0);
  const noise = (within + USUAL.noiseCounts * USUAL.noise) / (free.within + USUAL.noiseCounts);
  const between = squares(all) - within;
  // Places a head times the degrees of freedom, were the heads alike in number.
  const size = all.length - heads.reduce((sum, own) => sum + own.length ** 2, 0) / all.length;
  const spread = size > 0 ? (Math.max(0, between - free.between * noise) / size) * free.between : 0;
  return { noise, spread: (spread + USUAL.spreadCounts * USUAL.spread) / (free.between + USUAL.spreadCounts) };
};
