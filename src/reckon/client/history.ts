import type { ClientFile } from '../../journal/journal.ts';
import type { SalonSettings } from '../../journal/salon.ts';
import type { Stood } from '../../journal/source.ts';
import type { Visit } from '../../records/schema/entry.ts';
import { daysBetween } from '../../text/dates.ts';
import { add, compare, div, type Exact, exact, exactOf } from '../../text/exact.ts';
import { countAtFront } from '../../text/ordered.ts';
import { growthRate, isPlausibleGrowth } from '../../trade/growth.ts';
import { isLengthUnit, toMillimetres } from '../../trade/units.ts';
import { putsOnColour, reachesRoots } from '../head/services.ts';
import type { VisitReckoned } from '../model.ts';
import { grownOn } from './cut-off.ts';

/**
 * What earlier visits say of this one: the days since colour and since the roots were done, and the new growth.
 *
 * Reads: the client's earlier visits, reckoned. Gives: figures. Runs again: when an earlier visit changes.
 */

/** Fewer days than this teach no rate: a millimetre misread would be a fifth of the growth. A choice, no source. */
const LEAST_DAYS = 14;

/** New growth measured at a visit, in millimetres; undefined where no `regrowth` line stands. */
export const measuredGrowth = ({ entry }: Stood<Visit>): Exact | undefined => {
  for (const fact of entry.facts) {
    if (fact.word !== 'regrowth') continue;
    const { value, unit } = fact.length;
    if (isLengthUnit(unit)) return toMillimetres(exactOf(value), unit);
  }
  return undefined;
};

/** The median of what is in order of size; undefined of nothing. */
const middleOf = (sorted: readonly Exact[]): Exact | undefined => {
  const [low, high] = [sorted[(sorted.length - 1) >> 1], sorted[sorted.length >> 1]];
  return low && high && div(add(low, high), exact(2));
};

/** The rate that a visit's own measured regrowth teaches, where it teaches one. */
const rateOf = ({ growth: { measured }, daysSinceRoots: days }: VisitReckoned): Exact | undefined => {
  if (measured === undefined || days === undefined || days < LEAST_DAYS) return undefined;
  const rate = growthRate(measured, days);
  return isPlausibleGrowth(rate) ? rate : undefined;
};

/** The client's own rate of growth, mm a day: the median of what her measured regrowths teach; undefined without one. */
export const ownGrowth = (visits: readonly VisitReckoned[]): Exact | undefined => {
  const rates: Exact[] = [];
  for (const visit of visits) {
    const rate = rateOf(visit);
    if (rate !== undefined) rates.push(rate);
  }
  return middleOf(rates.sort(compare));
};

type SinceKey = 'daysSinceColour' | 'daysSinceRoots';

/**
 * Days since the last visit before a date that does something; `key` is where the visits themselves keep it, so that
 * only those of the date before are asked.
 */
const daysSince = (
  date: string,
  earlier: readonly VisitReckoned[],
  does: (visit: VisitReckoned) => boolean,
  key: SinceKey,
): number | undefined => {
  const last = earlier.at(-1);
  if (last === undefined || last.date === date) return last?.[key];
  const days = daysBetween(last.date, date);
  for (let index = earlier.length - 1; earlier[index]?.date === last.date; index--)
    if (does(earlier[index] as VisitReckoned)) return days;
  return last[key] === undefined ? undefined : last[key] + days;
};

/** What the first `visits` of a client taught of her growth, in order of size; taken along from visit to visit. */
export type GrowthLearnt = { readonly sorted: Exact[]; visits: number };

/** Nothing learnt yet. */
export const nothingLearnt = (): GrowthLearnt => ({ sorted: [], visits: 0 });

/** The client's own rate before a date, as `ownGrowth`; visits and dates come in order. */
const learntBefore = (learnt: GrowthLearnt, earlier: readonly VisitReckoned[], date: string): Exact | undefined => {
  for (let visit = earlier[learnt.visits]; visit !== undefined && visit.date < date; visit = earlier[learnt.visits]) {
    const rate = rateOf(visit);
    if (rate !== undefined)
      learnt.sorted.splice(
        countAtFront(learnt.sorted, (other) => compare(other, rate) <= 0),
        0,
        rate,
      );
    learnt.visits++;
  }
  return middleOf(learnt.sorted);
};

/**
 * The part of a reckoned visit that earlier visits settle. Only visits before its date count. `learnt` is handed from
 * visit to visit of a client, in order.
 */
export const reckonHistory = (
  client: ClientFile,
  visit: Stood<Visit>,
  date: string,
  earlier: readonly VisitReckoned[],
  salon: SalonSettings,
  learnt: GrowthLearnt,
): Pick<VisitReckoned, 'daysSinceColour' | 'daysSinceRoots' | 'growth'> => {
  const daysSinceRoots = daysSince(date, earlier, reachesRoots, 'daysSinceRoots');
  const own = learntBefore(learnt, earlier, date);
  const rate = own ?? salon.growth;
  return {
    daysSinceColour: daysSince(date, earlier, putsOnColour, 'daysSinceColour'),
    daysSinceRoots,
    growth: {
      expected: daysSinceRoots === undefined ? undefined : grownOn(client, daysSinceRoots, rate),
      rate,
      own: own !== undefined,
      measured: measuredGrowth(visit),
    },
  };
};
