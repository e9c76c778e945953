import { placeOf } from '../../reckon/cite.ts';
import { factsOf } from '../../reckon/facts-of.ts';
import type { Run, VisitReckoned } from '../../reckon/model.ts';
import { sectionsOf } from '../../reckon/sections-of.ts';
import { matchZones } from '../../reckon/zone-match.ts';
import type { Placing } from '../../records/schema/visit.ts';
import type { Place } from '../../text/span.ts';
import { defineRule, type Found, foundEach, NONE } from '../rule.ts';

/** Seconds that a section takes at the least: common practice, no source, a generous bound for one pair of hands. */
const FASTEST = 20;

const placesRun = ({ bowls, zones }: Placing, run: Run, { salon }: VisitReckoned): boolean =>
  bowls.some(({ name }) => name.toUpperCase() === run.bowl) &&
  (run.zone === '' || zones.length === 0 || zones.some(({ zone }) => matchZones(zone, run.zone, salon.zones)));

type Work = { readonly placings: readonly Placing[]; readonly runs: readonly Run[] };

const shareLine = (some: readonly Run[], others: readonly Run[]): boolean =>
  some.some(({ onPlace: { line } }) => others.some(({ onPlace }) => onPlace.line === line));

/** Lines that share hair, taken together: each group of `place` lines with all the runs that put them on. */
const worksOf = (visit: VisitReckoned): Work[] => {
  let works: Work[] = [];
  for (const fact of factsOf(visit.visit, 'place')) {
    const runs = visit.clock.runs.filter((run) => placesRun(fact, run, visit));
    const joined = works.filter((work) => shareLine(work.runs, runs));
    if (joined.length > 0) works = works.filter((work) => !joined.includes(work));
    works.push({
      placings: [...joined.flatMap(({ placings }) => placings), fact],
      runs: joined.length === 0 ? runs : [...new Set([...joined.flatMap((work) => work.runs), ...runs])],
    });
  }
  return works;
};

/** Minutes that the runs took to put on, those of one line once; undefined where one gives no span. */
const minutesOf = (runs: readonly Run[]): { readonly minutes: number; readonly place: Place } | undefined => {
  const [first] = runs;
  if (first === undefined || runs.some(({ spanned, about }) => !spanned || about)) return undefined;
  const lines = new Map(runs.map((run) => [run.onPlace.line, run]));
  const minutes = [...lines.values()].reduce((sum, { firstOn, allOn }) => sum + allOn - firstOn, 0);
  return { minutes, place: first.onPlace };
};

/** Whether even the shortest span is long enough for all sections of the visit, as nearly always. */
const isSlow = ({ visit, clock }: VisitReckoned): boolean => {
  const sections = factsOf(visit, 'place').reduce((sum, placing) => sum + (sectionsOf(placing) ?? 0), 0);
  const shorter = (least: number, { spanned, firstOn, allOn }: Run): number =>
    spanned ? Math.min(least, allOn - firstOn) : least;
  return clock.runs.reduce(shorter, Number.POSITIVE_INFINITY) * 60 >= sections * FASTEST;
};

const foundIn = (visit: VisitReckoned, { placings, runs }: Work): Found | undefined => {
  const sections = placings.reduce((sum, placing) => sum + (sectionsOf(placing) ?? 0), 0);
  const took = sections === 0 ? undefined : minutesOf(runs);
  const [first] = placings;
  if (took === undefined || first === undefined) return undefined;
  // Two pairs of hands are twice as fast.
  const hands = visit.visit.entry.facts.some((fact) => fact.word === 'split' || fact.by !== undefined) ? 2 : 1;
  const seconds = (took.minutes * 60 * hands) / sections;
  if (seconds >= FASTEST) return undefined;
  return {
    place: took.place,
    message: `${sections} sections went on in ${took.minutes} min, ${Math.floor((took.minutes * 60) / sections)} s for each.`,
    expected: `A section takes ${FASTEST} s and more (common practice, a generous bound).`,
    todo: 'Write the span or the count as it was; if two worked at it, whose hand it was besides: `by nia`.',
    label: 'fast',
    also: [{ place: placeOf(visit.visit, first, first.bowls[0]?.at), says: 'the sections' }],
  };
};

export default defineRule({
  name: 'pace-unlikely',
  family: 'time',
  severity: 'mind',
  bears: 'that-day',
  over: 'visit',
  what: 'The sections of a `place` line went on faster than 20 seconds each, by the span of their `on` line.',
  why: 'A slip in the span moves every minute that counts from it, and a slip in the count the next bowl.',
  source: { kind: 'common practice' },
  check: (visit) => (isSlow(visit) ? NONE : foundEach(worksOf(visit), (work) => foundIn(visit, work))),
  bad: `
    range neon "Kelp direct" semi
      mix none
      shades teal
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 neon teal
      place A top weave x24
      on 14:00-14:05 A top
         ^^^^^^^^^^^
      off 14:30`,
  good: `
    range neon "Kelp direct" semi
      mix none
      shades teal
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 neon teal
      place A top weave x24
      on 14:00-14:25 A top
      off 14:45`,
});
