import type { ClientFile } from '../../journal/journal.ts';
import type { SalonSettings } from '../../journal/salon.ts';
import type { Stood } from '../../journal/source.ts';
import type { Visit } from '../../records/schema/entry.ts';
import { daysBetween } from '../../text/dates.ts';
import { add, compare, div, type Exact, exact, exactOf } from '../../text/exact.ts';
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

const medianOf = (values: readonly Exact[]): Exact | undefined => {
  const sorted = [...values].sort(compare);
  const [low, high] = [sorted[(sorted.length - 1) >> 1], sorted[sorted.length >> 1]];
  return low && high && div(add(low, high), exact(2));
};

/** The rate that a visit's own measured regrowth teaches, where it teaches one. */
const rateOf = ({ growth: { measured }, daysSinceRoots: days }: VisitReckoned): Exact | undefined => {
  if (measured === undefined || days === undefined || days < LEAST_DAYS) return undefined;
  const rate = growthRate(measured, days);
  return isPlausibleGrowth(rate) ? rate : undefined;
};

/**
 * The client's own rate of growth, mm a day: the median of what her measured regrowths teach; undefined without one.
 * With a day, of those before it.
 */
export const ownGrowth = (visits: readonly VisitReckoned[], before?: string): Exact | undefined => {
  const rates: Exact[] = [];
  for (const visit of visits) {
    if (before !== undefined && visit.date >= before) continue;
    const rate = rateOf(visit);
    if (rate !== undefined) rates.push(rate);
  }
  return rates.length === 0 ? undefined : medianOf(rates);
};

const daysSince = (
  date: string,
  earlier: readonly VisitReckoned[],
  does: (visit: VisitReckoned) => boolean,
): number | undefined => {
  const last = earlier.findLast((other) => other.date < date && does(other));
  return last && daysBetween(last.date, date);
};

/** The part of a reckoned visit that earlier visits settle. Only visits before its date count. */
export const reckonHistory = (
  client: ClientFile,
  visit: Stood<Visit>,
  date: string,
  earlier: readonly VisitReckoned[],
  salon: SalonSettings,
): Pick<VisitReckoned, 'daysSinceColour' | 'daysSinceRoots' | 'growth'> => {
  const daysSinceRoots = daysSince(date, earlier, reachesRoots);
  const own = ownGrowth(earlier, date);
  const rate = own ?? salon.growth;
  return {
    daysSinceColour: daysSince(date, earlier, putsOnColour),
    daysSinceRoots,
    growth: {
      expected: daysSinceRoots === undefined ? undefined : grownOn(client, daysSinceRoots, rate),
      rate,
      own: own !== undefined,
      measured: measuredGrowth(visit),
    },
  };
};
