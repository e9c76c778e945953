import type { VisitReckoned } from '../reckon/model.ts';
import { isLightening, type Moment, testsFor } from '../reckon/state.ts';

/** Whether a test was made when the first lightener of a visit was on already: what it shows comes too late for that. */
export const isTooLate = (visit: VisitReckoned, made: Moment): boolean => {
  if (made.date !== visit.date || made.minute === undefined) return false;
  const lightening = new Set(visit.bowls.filter(isLightening).map(({ name }) => name));
  const first = visit.clock.runs.filter(({ bowl }) => bowl !== undefined && lightening.has(bowl));
  return first.length > 0 && made.minute > Math.min(...first.map(({ firstOn }) => firstOn));
};

const isMadeSince = (visit: VisitReckoned, from: string, kinds: readonly (string | undefined)[]): boolean =>
  testsFor(visit.client, visit.salon.hours, visit.date).some(
    ({ kind, result, notNeeded, made }) =>
      kinds.includes(kind) && result !== 'adverse' && !notNeeded && made !== undefined && made.date >= from,
  );

/**
 * Whether a strand or stretch test that does not speak against going on was made from a day (ISO date; '' for ever) up to
 * a visit, at the visit itself included.
 */
export const triedSince = (visit: VisitReckoned, from: string): boolean =>
  isMadeSince(visit, from, ['strand', 'stretch']);

/**
 * As `triedSince`, of a stretch test alone. A strand shows how far hair lifts; whether it is rested, the fingers feel, so
 * no strand test shortens a waiting time.
 */
export const stretchedSince = (visit: VisitReckoned, from: string): boolean => isMadeSince(visit, from, ['stretch']);
