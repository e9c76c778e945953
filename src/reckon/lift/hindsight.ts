import { AIMS } from './aims.ts';
import { minutesTo, minutesToDepth } from './curve.ts';
import { middleOfLine } from './first-check.ts';
import { mean } from './grouped.ts';
import { goneBy, type LiftVisit, liftVisits, SALON_VISITS } from './lift-visits.ts';
import { type PaceAsk, paceFrom, paceModel } from './pace.ts';
import type { PaceModel } from './pace-model.ts';
import type { LiftSeries } from './series.ts';

/**
 * How far out the estimates of lift are: every visit is left out in turn and estimated from the others.
 *
 * Reads: the lift of all visits. Gives: a case for each place that was looked at, with what each guess said of it.
 */

/** What a visit is estimated from: the visits before its date, as in daily use, or all others. */
export type Basis = 'before' | 'others';

/** One place of one visit: minutes to the stage it reached, as its own looks have it, and the guesses. */
export type LiftCase = {
  readonly client: string;
  readonly date: string;
  readonly bowl: string;
  readonly zone: string;
  readonly product: string;
  readonly stage: string;
  readonly minutes: number;
  readonly estimate: { readonly minutes: number; readonly low: number; readonly high: number } | undefined;
  /** What she took to the same stage on her last visit before that reached it with the same product and strength. */
  readonly lastTime: number | undefined;
  /** The middle of the product's time line. */
  readonly lineMiddle: number | undefined;
};

export type Hindsight = {
  readonly basis: Basis;
  readonly cases: readonly LiftCase[];
  /** Places whose last stage was there at the first look already: how long it took is not known. */
  readonly untold: number;
};

/** The last stage that a series reached, by half steps, and the minutes to it; undefined when they are not known. */
const lastReached = ({ curve }: LiftSeries): { readonly stage: string; readonly minutes: number } | undefined => {
  const [last] = AIMS.toReversed().flatMap(({ stage, depth }) => {
    const reached = minutesToDepth(curve, depth);
    return reached === undefined ? [] : [{ stage, ...reached }];
  });
  return last?.byFirst === false ? { stage: last.stage, minutes: last.minutes } : undefined;
};

const lastTimeOf = (
  earlier: readonly LiftVisit[],
  { client, strength, zone, stage }: PaceAsk & { readonly zone: string },
): number | undefined => {
  for (const visit of earlier.toReversed()) {
    if (visit.client !== client) continue;
    const same = visit.series.filter((one) => one.strength === strength);
    const there = same.filter((one) => one.zone === zone);
    const minutes = (there.length > 0 ? there : same)
      .map(({ curve }) => minutesTo(curve, stage)?.minutes)
      .filter((found) => found !== undefined);
    if (minutes.length > 0) return mean(minutes);
  }
  return undefined;
};

const casesOf = (
  visit: LiftVisit,
  earlier: readonly LiftVisit[],
  known: readonly LiftVisit[],
  model: PaceModel | undefined,
): (LiftCase | undefined)[] =>
  visit.series.map((one) => {
    const { client, date, bowl, zone, product, strength, heat } = one;
    const reached = lastReached(one);
    if (reached === undefined) return undefined;
    const ask = { client, product, strength, zone, heat, stage: reached.stage, before: date };
    const pace = paceFrom(model, known, ask);
    return {
      client,
      date,
      bowl,
      zone,
      product: product.name,
      ...reached,
      estimate: pace && { minutes: pace.minutes, low: pace.low, high: pace.high },
      lastTime: lastTimeOf(earlier, ask),
      lineMiddle: middleOfLine(product),
    };
  });

const hindsightProduct = (visits: readonly LiftVisit[], basis: Basis): (LiftCase | undefined)[] => {
  // Visits of one day share what was known before it, as long as that is the same for every client.
  let shared: { readonly date: string; readonly model: PaceModel | undefined } | undefined;
  return visits.flatMap((visit) => {
    const earlier = visits.filter(({ date }) => date < visit.date);
    const known = goneBy(basis === 'before' ? earlier : visits.filter((one) => one !== visit), visit.client);
    const isShared = basis === 'before' && earlier.length <= SALON_VISITS;
    const model = isShared && shared?.date === visit.date ? shared.model : paceModel(known);
    shared = isShared ? { date: visit.date, model } : undefined;
    return casesOf(visit, earlier, known, model);
  });
};

/** Leaves out every visit in turn. Minutes count from first on. */
export const hindsightLift = (all: readonly LiftSeries[], basis: Basis = 'before'): Hindsight => {
  const products = [...new Set(all.map(({ product }) => product.name))].sort();
  const found = products.flatMap((product) => hindsightProduct(liftVisits(all, product), basis));
  const cases = found.filter((one) => one !== undefined);
  return { basis, cases, untold: found.length - cases.length };
};
