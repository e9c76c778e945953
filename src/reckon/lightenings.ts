import { sign } from '../text/exact.ts';
import { isLightening, zonesOfBowl } from './head/services.ts';
import type { Lightening, VisitReckoned } from './model.ts';

/**
 * Where hair was lightened at visits, kept so that a later visit asks of as many places as there are and not of as many
 * visits.
 *
 * Reads: a visit and its bowls. Gives: lightenings. Runs again: when the visit or one before it changes.
 */

/** Days kept of the same places: of the newest two, one is another day than that of the visit that asks. */
const DAYS_KEPT = 2;

/** What was lightened at one visit, in the order of its bowls; a bowl that was left whole lightened nothing. */
export const lightenedAt = (visit: Pick<VisitReckoned, 'visit' | 'clock' | 'bowls' | 'date'>): Lightening[] =>
  visit.bowls.flatMap((bowl) =>
    isLightening(bowl) && (bowl.used === undefined || sign(bowl.used) > 0)
      ? [{ when: visit.date, zones: zonesOfBowl(visit, bowl.name), place: bowl.place }]
      : [],
  );

/**
 * The lightenings up to a visit, newest first: its own before the earlier ones, and of equal places only the newest two
 * days, since hair that is cut off by then is cut off for every earlier day too.
 */
export const lightenedBy = (earlier: readonly Lightening[], own: readonly Lightening[]): readonly Lightening[] => {
  if (own.length === 0) return earlier;
  const days = new Map<string, Set<string>>();
  return [...own, ...earlier].filter(({ when, zones }) => {
    const key = zones.join('\n');
    const known = days.get(key);
    if (known === undefined) days.set(key, new Set([when]));
    else if (known.has(when) || known.size >= DAYS_KEPT) return false;
    else known.add(when);
    return true;
  });
};
