import type { ShelfItem } from '../../journal/shelf.ts';
import { aimDepth } from './aims.ts';
import { minutesToDepth } from './curve.ts';
import { firstCheckAt } from './first-check.ts';
import { goneBy, type LiftVisit, liftVisits } from './lift-visits.ts';
import { type Estimate, estimateAt, modelPace, type PaceModel } from './pace-model.ts';
import { heatKey, readingsOf, strengthKey } from './reading.ts';
import type { LiftSeries } from './series.ts';

/**
 * How long a head is likely to take to a stage, from the visits before a day.
 *
 * Reads: the lift of all visits. Gives: an estimate with its span, and what it rests on. Runs again: when a visit with
 * the same product before that day changes.
 */
export type PaceAsk = {
  readonly client: string;
  readonly product: ShelfItem;
  /** Of the developer, per cent. */
  readonly strength: number | undefined;
  /** Without one, the places she had with the product before. */
  readonly zone?: string;
  /** Minutes of heat meant. */
  readonly heat?: number;
  /** The stage to reach, pale yellow at most. */
  readonly stage: string;
  /** ISO date: only visits before it count. */
  readonly before: string;
};

/** One earlier visit of hers with the same product and strength: minutes to the stage, from the first place to the last. */
export type OwnPace = { readonly date: string; readonly from: number; readonly to: number };

export type Pace = Estimate & {
  readonly stage: string;
  /** Her last three that reached the stage, oldest first. */
  readonly own: readonly OwnPace[];
  /** Earlier visits that the estimate rests on: hers at this strength, the salon's at it, and the salon's at any. */
  readonly visits: { readonly own: number; readonly strength: number; readonly product: number };
  /** Minutes after first on. */
  readonly firstCheck: number | undefined;
};

const SHOWN = 3;

const ownPaces = (hers: readonly LiftVisit[], depth: number, isMeant: (one: LiftSeries) => boolean): OwnPace[] =>
  hers
    .flatMap(({ date, series }): OwnPace[] => {
      const minutes = series
        .filter(isMeant)
        .map(({ curve }) => minutesToDepth(curve, depth)?.minutes)
        .filter((found) => found !== undefined);
      return minutes.length === 0 ? [] : [{ date, from: Math.min(...minutes), to: Math.max(...minutes) }];
    })
    .slice(-SHOWN);

/** The model of what visits teach of one product; undefined when they teach nothing. */
export const paceModel = (visits: readonly LiftVisit[]): PaceModel | undefined =>
  modelPace(visits.flatMap(({ series }) => series.flatMap(readingsOf)));

/** The estimate of a model made from `visits`, oldest first, which are all that it may know. */
export const paceFrom = (
  model: PaceModel | undefined,
  visits: readonly LiftVisit[],
  ask: PaceAsk,
): Pace | undefined => {
  const depth = aimDepth(ask.stage);
  if (depth === undefined || model === undefined) return undefined;
  const hers = visits.filter(({ client }) => client === ask.client);
  const known = new Set(hers.flatMap(({ series }) => series.map(({ zone }) => zone)));
  const estimate = estimateAt(
    model,
    {
      client: ask.client,
      strength: strengthKey(ask.strength),
      heated: heatKey(ask.heat ?? 0),
      zones: ask.zone === undefined ? [...known] : [ask.zone],
    },
    depth,
  );
  if (estimate === undefined) return undefined;
  const atStrength = ({ strength }: LiftSeries): boolean => strength === ask.strength;
  const countOf = (some: readonly LiftVisit[]): number => some.filter(({ series }) => series.some(atStrength)).length;
  const own = ownPaces(hers, depth, (one) => atStrength(one) && (ask.zone === undefined || one.zone === ask.zone));
  return {
    ...estimate,
    stage: ask.stage,
    own,
    visits: {
      own: countOf(hers),
      strength: countOf(visits),
      product: visits.length,
    },
    firstCheck: firstCheckAt(ask.product, Math.min(estimate.low, ...own.map(({ from }) => from))),
  };
};

/**
 * How long a head is likely to take to a stage with a product at a strength, from visits before the day. Undefined when
 * no such visit was looked at, none reached the stage, all had it by the first look, or the stage is no aim of lift
 * (past pale yellow). Judge by the hair, not the clock.
 */
export const paceFor = (all: readonly LiftSeries[], ask: PaceAsk): Pace | undefined => {
  const earlier = liftVisits(all, ask.product.name).filter(({ date }) => date < ask.before);
  const visits = goneBy(earlier, ask.client);
  return paceFrom(paceModel(visits), visits, ask);
};
