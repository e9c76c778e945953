import { pairs } from '../../text/pairs.ts';
import { grouped } from '../lift/grouped.ts';
import type { Need } from './need.ts';

/**
 * How far a root bowl grows with the new growth: a share of it does, the rest goes on every parting alike, whatever its
 * length. The share is learnt from the salon's own root bowls.
 */

const SHARES = [0, 0.25, 0.5, 0.75, 1] as const;

/** Taken until the notes tell: half. A choice, no source. */
export const SHARE_UNTOLD = 0.5;

/** Fewer pairs of bowls than this teach no share. A choice, no source. */
const LEAST_PAIRS = 12;

/** New growth in mm to which the share refers: about two months of it. */
const REFERENCE = 20;

/** What a bowl is to a bowl on the reference growth: 1 on that, more on longer growth. */
const sizeOn = (growth: number, share: number): number => 1 - share + (share * growth) / REFERENCE;

/** By how much a bowl is larger on one growth than on another. */
export const growthFactor = (from: number, to: number, share: number): number =>
  sizeOn(to, share) / sizeOn(from, share);

export type GrowthPair = { readonly ratio: number; readonly from: number; readonly to: number };

/** Neighbouring root bowls of one client, of one product and at the same places, by what they needed. */
export const growthPairs = (needs: readonly Need[]): GrowthPair[] => {
  const told = needs.flatMap((need) =>
    need.roots && need.told && need.growth !== undefined ? [{ ...need, growth: need.growth }] : [],
  );
  const rows = grouped(told, ({ client, product, zones }) => [client, product, ...zones].join('\n'));
  return [...rows.values()].flatMap((row) =>
    pairs(row, row.slice(1)).map(([before, need]) => ({
      ratio: need.used / before.used,
      from: before.growth,
      to: need.growth,
    })),
  );
};

/** The share that fits the pairs best, by the sum of the errors without their sign; a tie to the smaller share. */
export const growthShare = (pairs: readonly GrowthPair[]): number => {
  if (pairs.length < LEAST_PAIRS) return SHARE_UNTOLD;
  const errorOf = (share: number): number =>
    pairs.reduce((sum, { ratio, from, to }) => sum + Math.abs(Math.log(ratio / growthFactor(from, to, share))), 0);
  return SHARES.reduce<number>((best, share) => (errorOf(share) < errorOf(best) ? share : best), SHARES[0]);
};
