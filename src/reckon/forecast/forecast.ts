import { grouped } from '../lift/grouped.ts';
import type { VisitReckoned } from '../model.ts';
import { growthFactor, growthPairs, growthShare, SHARE_UNTOLD } from './growth-share.ts';
import { alike, type BowlAsk, type Need, needsOf } from './need.ts';

/**
 * Grams to mix for a client's next bowl, from what like bowls of hers really needed.
 *
 * Reads: what bowls needed, before the day. Gives: grams and their range. Runs again: when an earlier visit changes.
 */

/** Bowls of hers that are looked back to: the latest five. A choice, no source. */
const LOOK_BACK = 5;

/** Share of needs that the range leaves out at either end: it is meant for eight bowls of ten. */
const OUTSIDE = 0.1;

/** Beyond twice or half the growth a bowl is another service, and is scaled no further. A choice, no source. */
export const MOST_SCALED = 2;

/** Bowls of the salon that it learns from: the latest thousand. A choice, no source. */
const SALON_BOWLS = 1000;

/** Fewer misses of the salon's forecasts than this tell no range. A choice, no source. */
const LEAST_MISSES = 20;

/** The share of bowls that may run short is the salon's own, within these. A choice, no source. */
const SHORT = { least: 0.05, most: 0.25 } as const;

/** What bowls needed, as a share of what was forecast. */
export type Spread = {
  /** The ends between which eight of ten lie. */
  readonly low: number;
  readonly high: number;
  /** Where as few run short as by mixing the same as last time. */
  readonly mix: number;
  /** How many of the salon's bowls so far would have run short by that; undefined while the notes tell too little. */
  readonly short?: { readonly bowls: number; readonly of: number };
};

/** Until the notes tell: a sixth either way, and a tenth to spare. A choice, no source. */
const SPREAD_UNTOLD: Spread = { low: 5 / 6, high: 7 / 6, mix: 1.1 };

/** What the salon's bowls before a day teach about all of them. */
export type SalonMix = {
  /** Share of a root bowl that grows with the new growth. */
  readonly share: number;
  /** Where earlier bowls went to the very same places, and where only the product is the same. */
  readonly there: Spread;
  readonly elsewhere: Spread;
};

/** While the salon's notes tell nothing. */
export const SALON_UNTOLD: SalonMix = { share: SHARE_UNTOLD, there: SPREAD_UNTOLD, elsewhere: SPREAD_UNTOLD };

/** A forecast in grams. */
export type MixForecast = {
  /** What the bowl is likely to need, and the ends between which eight needs of ten lie by the salon's own misses. */
  readonly need: number;
  readonly low: number;
  readonly high: number;
  /**
   * What to mix, so that as few bowls run short as by mixing the same as last time. The need itself while no note says what
   * was left.
   */
  readonly mix: number;
  /** How many of the salon's bowls so far would have run short by grams made so; undefined where nothing tells. */
  readonly short: Spread['short'];
  /** The bowls it is worked out from, latest last. */
  readonly from: readonly Need[];
  /** Whether those went to the very same places. */
  readonly there: boolean;
  /** Whether it was scaled to the new growth, which is so many mm on the day; undefined where the notes tell none. */
  readonly scaled: boolean;
  readonly growth: number | undefined;
  /** Share of a root bowl that grows with the new growth. */
  readonly share: number;
  /** What each of those bowls comes to on the day's new growth. */
  readonly sized: readonly number[];
  /** Held by the latest bowl like it. */
  readonly lastMixed: number;
};

/** The middle of the values; of none not a number. */
const median = (values: readonly number[]): number => {
  const sorted = values.toSorted((a, b) => a - b);
  const [low = Number.NaN, high = Number.NaN] = [sorted[(sorted.length - 1) >> 1], sorted[sorted.length >> 1]];
  return (low + high) / 2;
};

/** The value below which a share of the values lies, between neighbours in proportion. */
const quantile = (sorted: readonly number[], share: number): number => {
  const place = share * (sorted.length - 1);
  const [low = Number.NaN, high = Number.NaN] = [sorted[Math.floor(place)], sorted[Math.ceil(place)]];
  return low + (high - low) * (place - Math.floor(place));
};

type Likely = Omit<MixForecast, 'low' | 'high' | 'mix' | 'short'>;

const likely = (own: readonly Need[], ask: BowlAsk, share: number): Likely | undefined => {
  const { needs, there } = alike(own, ask);
  const last = needs.at(-1);
  if (last === undefined) return undefined;
  // A bowl without a `left` line may have been thrown out half full: it counts only while nothing better is there.
  const told = needs.filter((need) => need.told);
  const from = (told.length > 0 ? told : needs).slice(-LOOK_BACK);
  const { growth } = ask;
  const scaled = ask.roots && growth !== undefined && from.some((need) => need.growth !== undefined);
  const sized = from.map(({ used, growth: then }) => {
    if (!scaled || then === undefined) return used;
    const now = Math.min(Math.max(growth, then / MOST_SCALED), then * MOST_SCALED);
    return used * growthFactor(then, now, share);
  });
  return { need: median(sized), from, there, scaled, growth, share, sized, lastMixed: last.mixed };
};

type Miss = { readonly miss: number; readonly there: boolean; readonly shortBySame: boolean };

/** How each bowl's need came out beside its forecast from the client's bowls before it. */
const missesOf = (needs: readonly Need[], share: number): Miss[] =>
  [...grouped(needs, ({ client }) => client).values()].flatMap((own) =>
    own.flatMap((need): Miss[] => {
      if (!need.told) return [];
      const before = own.filter(({ date }) => date < need.date);
      const found = likely(before, need, share);
      if (found === undefined) return [];
      return [{ miss: need.used / found.need, there: found.there, shortBySame: found.lastMixed < need.used }];
    }),
  );

const spreadOf = (all: readonly Miss[]): Spread => {
  if (all.length < LEAST_MISSES) return SPREAD_UNTOLD;
  const misses = all.map(({ miss }) => miss).sort((a, b) => a - b);
  const short = all.filter(({ shortBySame }) => shortBySame).length / all.length;
  const spared = Math.min(Math.max(short, SHORT.least), SHORT.most);
  const mix = quantile(misses, 1 - spared);
  return {
    low: Math.min(1, quantile(misses, OUTSIDE)),
    high: Math.max(1, quantile(misses, 1 - OUTSIDE)),
    mix,
    short: { bowls: misses.filter((miss) => miss > mix).length, of: misses.length },
  };
};

/** What the salon's bowls teach. `all` are those before the day it serves, oldest first. */
export const salonMix = (all: readonly Need[]): SalonMix => {
  const needs = all.slice(-SALON_BOWLS);
  const share = growthShare(growthPairs(needs));
  const misses = missesOf(needs, share);
  return {
    share,
    there: spreadOf(misses.filter(({ there }) => there)),
    elsewhere: spreadOf(misses.filter(({ there }) => !there)),
  };
};

/** Grams for one bowl, from the client's own needs, oldest first; undefined where she had none like it. */
export const forecastMix = (
  own: readonly Need[],
  ask: BowlAsk,
  salon: SalonMix = SALON_UNTOLD,
): MixForecast | undefined => {
  const found = likely(own, ask, salon.share);
  if (found === undefined) return undefined;
  const { need } = found;
  const { low, high, mix, short } = found.there ? salon.there : salon.elsewhere;
  // Bowls of which no note says what was left did not run short as they were, so nothing is added, again and again.
  const isTold = found.from.some(({ told }) => told);
  const spare = isTold ? mix : 1;
  return { ...found, low: need * low, high: need * high, mix: need * spare, short: isTold ? short : undefined };
};

/** What every bowl before a day needed, of all clients, oldest first. */
export const needsBefore = (all: ReadonlyMap<string, readonly VisitReckoned[]>, date: string): Need[] =>
  [...all.values()]
    .flatMap((visits) => visits.filter((visit) => visit.date < date).flatMap(needsOf))
    .sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0));
