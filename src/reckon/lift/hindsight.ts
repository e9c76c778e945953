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

/** One place of one visit: minutes to the stage asked about, as its own looks have it, and the guesses. */
export type LiftCase = {
  readonly client: string;
  readonly date: string;
  readonly bowl: string;
  readonly zone: string;
  readonly product: string;
  /** The stage asked about. */
  readonly stage: string;
  /** Minutes to it, or to the last look where it was taken off before. */
  readonly minutes: number;
  /** Whether it came to the stage; else all that is known is that it takes longer. */
  readonly reached: boolean;
  readonly estimate: { readonly minutes: number; readonly low: number; readonly high: number } | undefined;
  /** What she took to the same stage on her last visit before that reached it with the same product and strength. */
  readonly lastTime: number | undefined;
  /** The middle of the product's time line. */
  readonly lineMiddle: number | undefined;
};

export type Hindsight = {
  readonly basis: Basis;
  readonly cases: readonly LiftCase[];
  /** Places where the stage was there at the first look already, or none was seen: how long it took is not known. */
  readonly untold: number;
};

/** The depth of the last stage that a series reached, by half steps; undefined where it reached none. */
const endOf = ({ curve }: LiftSeries): number | undefined =>
  AIMS.findLast(({ depth }) => minutesToDepth(curve, depth) !== undefined)?.depth;

/** The part of the visits before that came at least as far as the stage asked about. A choice, no source. */
const COME_AS_FAR = 1 / 4;

/** The furthest depth that a quarter of the values reach. */
const usualEnd = (visits: readonly LiftVisit[]): number | undefined => {
  const ends = visits.flatMap(({ series }) => series.flatMap((one) => endOf(one) ?? [])).sort((a, b) => b - a);
  return ends[Math.max(0, Math.ceil(ends.length * COME_AS_FAR) - 1)];
};

/**
 * The stage that is asked about, whether this visit came to it or not: as far as a quarter of hers before came, or of the
 * salon's where that is further. So a head that is taken off by the clock is asked about like the others. Her first in a
 * salon’s first is asked about what it came to.
 */
const stageAsked = (one: LiftSeries, known: readonly LiftVisit[], salonEnd: number | undefined): string | undefined => {
  const own = usualEnd(known.filter(({ client }) => client === one.client));
  const depth = own === undefined && salonEnd === undefined ? endOf(one) : Math.max(own ?? 0, salonEnd ?? 0);
  return AIMS.find((step) => step.depth === depth)?.stage;
};

/** Minutes to a depth, or to the last look if that came first; undefined where it was there at the first look already. */
const toldOf = (
  { curve }: LiftSeries,
  stage: string,
): { readonly minutes: number; readonly reached: boolean } | undefined => {
  const found = minutesTo(curve, stage);
  if (found !== undefined) return found.byFirst ? undefined : { minutes: found.minutes, reached: true };
  const last = curve.at(-1);
  return last && { minutes: last.minute, reached: false };
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
  { visits: known, model, end }: Known,
): (LiftCase | undefined)[] =>
  visit.series.map((one) => {
    const { client, date, bowl, zone, product, strength, heat } = one;
    const stage = stageAsked(one, known, end);
    const told = stage === undefined ? undefined : toldOf(one, stage);
    if (stage === undefined || told === undefined) return undefined;
    const ask = { client, product, strength, zone, heat, stage, before: date };
    const pace = paceFrom(model, known, ask);
    return {
      client,
      date,
      bowl,
      zone,
      product: product.name,
      stage,
      ...told,
      estimate: pace && { minutes: pace.minutes, low: pace.low, high: pace.high },
      lastTime: lastTimeOf(earlier, ask),
      lineMiddle: middleOfLine(product),
    };
  });

/** What a visit is estimated from: the visits, their model, and how far they mostly came. */
type Known = {
  readonly visits: readonly LiftVisit[];
  readonly model: PaceModel | undefined;
  readonly end: number | undefined;
};

const hindsightProduct = (visits: readonly LiftVisit[], basis: Basis): (LiftCase | undefined)[] => {
  // Visits of one day share what was known before it, as long as that is the same for every client.
  let shared: (Omit<Known, 'visits'> & { readonly date: string }) | undefined;
  return visits.flatMap((visit) => {
    const earlier = visits.filter(({ date }) => date < visit.date);
    const known = goneBy(basis === 'before' ? earlier : visits.filter((one) => one !== visit), visit.client);
    const isShared = basis === 'before' && earlier.length <= SALON_VISITS;
    const { model, end } =
      isShared && shared?.date === visit.date ? shared : { model: paceModel(known), end: usualEnd(known) };
    shared = isShared ? { date: visit.date, model, end } : undefined;
    return casesOf(visit, earlier, { visits: known, model, end });
  });
};

/** Leaves out every visit in turn. Minutes count from first on. */
export const hindsightLift = (all: readonly LiftSeries[], basis: Basis = 'before'): Hindsight => {
  const products = [...new Set(all.map(({ product }) => product.name))].sort();
  const found = products.flatMap((product) => hindsightProduct(liftVisits(all, product), basis));
  const cases = found.filter((one) => one !== undefined);
  return { basis, cases, untold: found.length - cases.length };
};
