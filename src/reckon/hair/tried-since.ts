import { isDate } from '../../text/dates.ts';
import { isLightening, type Moment, type TestMade, testsOfFibre } from '../client/state.ts';
import type { VisitReckoned } from '../model.ts';
import { firstDayOf } from '../when.ts';

/** Whether a test was made when the first lightener of a visit was on already: what it shows comes too late for that. */
export const isTooLate = (visit: VisitReckoned, made: Moment): boolean => {
  if (made.date !== visit.date || made.minute === undefined) return false;
  const lightening = new Set(visit.bowls.filter(isLightening).map(({ name }) => name));
  const first = visit.clock.runs.filter(({ bowl }) => bowl !== undefined && lightening.has(bowl));
  return first.length > 0 && made.minute > Math.min(...first.map(({ firstOn }) => firstOn));
};

/**
 * Whether a test was made after a service of a day, a month or a year as typed (undefined: at any time), for a visit. On
 * the very day of the service it may have come before it, so that only one noted under the visit itself counts: what the
 * client's history has was done before she came.
 */
export const isMadeSince = (
  { made, visit: noted }: TestMade,
  when: string | undefined,
  { visit }: Pick<VisitReckoned, 'visit'>,
): boolean => {
  if (made === undefined) return false;
  if (when === undefined || !isDate(when)) return when === undefined || made.date >= firstDayOf(when);
  return made.date > when || (made.date === when && noted === visit);
};

/** Tests of some kinds up to a visit that do not speak against going on. */
const goodTests = ({ client, salon, date }: VisitReckoned, kinds: readonly (string | undefined)[]): TestMade[] =>
  testsOfFibre(client, salon.hours, date).filter(
    ({ kind, result, notNeeded }) => kinds.includes(kind) && result !== 'adverse' && !notNeeded,
  );

/**
 * Whether a strand or stretch test that does not speak against going on was made since a service (its day, month or year
 * as typed; undefined: ever), up to a visit, at the visit itself included.
 */
export const triedSince = (visit: VisitReckoned, when: string | undefined): boolean =>
  goodTests(visit, ['strand', 'stretch']).some((test) => isMadeSince(test, when, visit));

/**
 * As `triedSince`, of a stretch test alone. A strand shows how far hair lifts; whether it is rested, the fingers feel, so
 * no strand test shortens a waiting time.
 */
export const stretchedSince = (visit: VisitReckoned, when: string | undefined): boolean =>
  goodTests(visit, ['stretch']).some((test) => isMadeSince(test, when, visit));

const areOnTheDay = (visit: VisitReckoned, kinds: readonly string[]): boolean =>
  goodTests(visit, kinds).some(({ made }) => made !== undefined && made.date >= visit.date);

/** Whether a strand or stretch test was made on the day of a visit. */
export const triedOnTheDay = (visit: VisitReckoned): boolean => areOnTheDay(visit, ['strand', 'stretch']);

/** Whether a stretch test was made on the day of a visit. */
export const stretchedOnTheDay = (visit: VisitReckoned): boolean => areOnTheDay(visit, ['stretch']);
