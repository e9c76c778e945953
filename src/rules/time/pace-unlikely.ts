import type { Run, VisitReckoned } from '../../reckon/model.ts';
import { matchZones } from '../../reckon/zone-match.ts';
import type { Placing } from '../../records/schema/visit.ts';
import type { Place } from '../../text/span.ts';
import { placeOf } from '../cite.ts';
import { defineRule, type Found } from '../rule.ts';

/** Seconds that a section takes at the least: common practice, no source, a generous bound for one pair of hands. */
const FASTEST = 20;

/** Sections of one line, both sides of a mirrored one; none where they are not counted. */
const sectionsOf = ({ sections = 0, mirror }: Placing): number => (mirror ? 2 : 1) * sections;

const placesRun = ({ bowls, zones }: Placing, run: Run, { salon }: VisitReckoned): boolean =>
  bowls.some(({ name }) => name.toUpperCase() === run.bowl) &&
  (run.zone === '' || zones.length === 0 || zones.some(({ zone }) => matchZones(zone, run.zone, salon.zones)));

type Work = { readonly placings: readonly Placing[]; readonly runs: readonly Run[] };

/** Lines that share hair, taken together: each group of `place` lines with all the runs that put them on. */
const worksOf = (visit: VisitReckoned): Work[] => {
  let works: Work[] = [];
  for (const fact of visit.visit.entry.facts) {
    if (fact.word !== 'place') continue;
    const runs = visit.clock.runs.filter((run) => placesRun(fact, run, visit));
    const lines = new Set(runs.map(({ onPlace }) => onPlace.line));
    const shares = (work: Work): boolean => work.runs.some(({ onPlace }) => lines.has(onPlace.line));
    const joined = works.filter(shares);
    works = works.filter((work) => !shares(work));
    works.push({
      placings: [...joined.flatMap(({ placings }) => placings), fact],
      runs: [...new Set([...joined.flatMap((work) => work.runs), ...runs])],
    });
  }
  return works;
};

/** Minutes that the runs took to put on, those of one line once; undefined where one gives no span. */
const minutesOf = (runs: readonly Run[]): { readonly minutes: number; readonly place: Place } | undefined => {
  const lines = new Map(runs.map((run) => [run.onPlace.line, run]));
  const [first] = runs;
  if (first === undefined || runs.some(({ spanned, about }) => !spanned || about)) return undefined;
  const minutes = [...lines.values()].reduce((sum, { firstOn, allOn }) => sum + allOn - firstOn, 0);
  return { minutes, place: first.onPlace };
};

function* found(visit: VisitReckoned): Generator<Found> {
  // Two pairs of hands are twice as fast.
  const hands = visit.visit.entry.facts.some((fact) => fact.word === 'split' || fact.by !== undefined) ? 2 : 1;
  for (const { placings, runs } of worksOf(visit)) {
    const took = minutesOf(runs);
    const sections = placings.reduce((sum, placing) => sum + sectionsOf(placing), 0);
    const [first] = placings;
    if (took === undefined || first === undefined || sections === 0) continue;
    const seconds = (took.minutes * 60 * hands) / sections;
    if (seconds >= FASTEST) continue;
    yield {
      place: took.place,
      message: `${sections} sections went on in ${took.minutes} min, ${Math.floor((took.minutes * 60) / sections)} s for each.`,
      expected: `A section takes ${FASTEST} s and more (common practice, a generous bound).`,
      todo: 'Write the span or the count as it was; if two worked at it, whose hand it was besides: `by nia`.',
      label: 'fast',
      also: [{ place: placeOf(visit.visit, first, first.bowls[0]?.at), says: 'the sections' }],
    };
  }
}

export default defineRule({
  name: 'pace-unlikely',
  family: 'time',
  severity: 'mind',
  over: 'visit',
  what: 'The sections of a `place` line went on faster than 20 seconds each, by the span of their `on` line.',
  why: 'A slip in the span moves every minute that counts from it, and a slip in the count the next bowl.',
  source: { kind: 'common practice' },
  check: found,
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
