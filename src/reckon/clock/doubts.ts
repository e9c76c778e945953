import type { SalonSettings } from '../../journal/salon.ts';
import type { Stood } from '../../journal/source.ts';
import type { Visit } from '../../records/schema/entry.ts';
import type { Clock } from '../../records/schema/values.ts';
import { placeOf } from '../cite.ts';
import type { ClockProblem } from '../model.ts';
import { eachClock } from './lines.ts';
import { halfDay } from './problems.ts';
import { doubtOf } from './settle.ts';

/** Says every time of a visit whose half of the day is in doubt: the header's, the clock lines', the tests', the next visit's. */
export const sayDoubts = (visit: Stood<Visit>, { hours }: SalonSettings): ClockProblem[] => {
  const problems: ClockProblem[] = [];
  if (hours === undefined) return problems;
  const say = (clock: Clock | undefined, line: number): void => {
    const doubt = clock && doubtOf(clock, hours);
    if (clock !== undefined && doubt !== undefined)
      problems.push(halfDay(doubt, placeOf(visit, { line }, clock.at), hours));
  };
  say(visit.entry.time, 0);
  for (const fact of visit.entry.facts) eachClock(fact, say);
  return problems;
};

const IN_DOUBT: ReadonlySet<ClockProblem['kind']> = new Set(['either-half-day', 'outside-hours']);

/** What can follow from a wrong reading of a time. */
const FOLLOWS: ReadonlySet<ClockProblem['kind']> = new Set([
  'off-before-on',
  'check-before-on',
  'off-without-on',
  'said-minutes',
  'span-backwards',
]);

/** A time in doubt is said once: what follows from how it was read is not. */
export const withoutDoubtful = (problems: readonly ClockProblem[]): readonly ClockProblem[] => {
  const doubtful = new Set<number>();
  for (const { kind, place } of problems) if (IN_DOUBT.has(kind)) doubtful.add(place.line);
  if (doubtful.size === 0) return problems;
  const follows = ({ kind, place, also }: ClockProblem): boolean =>
    FOLLOWS.has(kind) && [place, ...(also ?? []).map((second) => second.place)].some(({ line }) => doubtful.has(line));
  return problems.filter((problem) => !follows(problem));
};
