import { daysBetween } from '../../text/dates.ts';
import { toNumber } from '../../text/exact.ts';
import { grownOn } from '../client/cut-off.ts';
import { ownGrowth } from '../client/history.ts';
import { reachesRoots } from '../head/services.ts';
import type { VisitReckoned } from '../model.ts';
import { forecastMix, type MixForecast, type SalonMix } from './forecast.ts';
import { needsOf } from './need.ts';

/** A bowl of the last visit as it is to be mixed on a day. */
export type NextBowl = { readonly bowl: string; readonly forecast: MixForecast };

/** New growth in mm that a day will show; undefined while the notes hold no root service before it. */
export const growthOn = (visits: readonly VisitReckoned[], on: string): number | undefined => {
  const before = visits.filter(({ date }) => date < on);
  const last = before.findLast(reachesRoots);
  if (last === undefined) return undefined;
  return toNumber(grownOn(last.client, daysBetween(last.date, on), ownGrowth(before) ?? last.salon.growth));
};

/**
 * Grams for each bowl of a visit, were it mixed again on a day. `visits` are the client's, oldest first; `salon` what the
 * bowls of the salon before the day teach.
 */
export const nextBowls = (
  visit: VisitReckoned,
  visits: readonly VisitReckoned[],
  on: string,
  salon: SalonMix,
): NextBowl[] => {
  const own = visits.filter(({ date }) => date < on).flatMap(needsOf);
  const growth = growthOn(visits, on);
  return needsOf(visit).flatMap(({ bowl, product, zones, roots }): NextBowl[] => {
    const forecast = forecastMix(own, { product, zones, roots, growth }, salon);
    return forecast === undefined ? [] : [{ bowl, forecast }];
  });
};
