import type { Stood } from '../../journal/source.ts';
import { bowlsPutOn } from '../../reckon/bowl/applied.ts';
import { placeOf } from '../../reckon/cite.ts';
import { isLightening } from '../../reckon/client/state.ts';
import { factsOf } from '../../reckon/facts-of.ts';
import type { VisitReckoned } from '../../reckon/model.ts';
import { matchZones } from '../../reckon/zone-match.ts';
import type { Visit } from '../../records/schema/entry.ts';
import type { Place } from '../../text/span.ts';
import { defineRule, type Found } from '../rule.ts';

/** A remark that says which part of the zone was left: `leave crown "round the whorl"`. */
const PART =
  /^(?:a|the|round|around|at|by|under|behind|above|below|near|along|only|just|inside|beside|last|first|lowest)\b/iu;

type Named = { readonly zone: string; readonly place: Place; readonly bowls: readonly string[] };

const placedIn = (visit: Stood<Visit>): readonly Named[] =>
  visit.entry.facts.flatMap((fact) =>
    fact.word !== 'place' && fact.word !== 'on'
      ? []
      : fact.zones.map(({ zone, at }) => ({
          zone,
          place: placeOf(visit, fact, at),
          bowls: fact.bowls.map(({ name }) => name.toUpperCase()),
        })),
  );

/**
 * The bowls that what is left out is left out of: those that lighten, where one does. Toner or colour over all of it
 * afterwards takes nothing back.
 */
const leftOutOf = (visit: VisitReckoned): ReadonlySet<string> => {
  const bowls = bowlsPutOn(visit);
  const lightening = bowls.filter(isLightening);
  return new Set((lightening.length > 0 ? lightening : bowls).map(({ name }) => name));
};

/** Whether every word of a zone that was left out is in the zone that was placed: all of that place was left out. */
const isIn = (placed: string, left: string): boolean => {
  const words = placed.split(' ');
  return left.split(' ').every((word) => words.includes(word));
};

function* found(reckoned: VisitReckoned): Generator<Found> {
  const { visit, salon } = reckoned;
  const meant = leftOutOf(reckoned);
  const placed = placedIn(visit).filter(({ bowls }) => bowls.length === 0 || bowls.some((name) => meant.has(name)));
  for (const fact of factsOf(visit, 'leave')) {
    if (PART.test(fact.says?.text ?? '')) continue;
    for (const { zone, at } of fact.zones) {
      const on = placed.find((one) => matchZones(one.zone, zone, salon.zones) !== undefined && isIn(one.zone, zone));
      if (on === undefined) continue;
      const bowl = on.bowls.length === 0 ? 'A bowl' : `Bowl ${on.bowls.join(' and ')}`;
      yield {
        place: placeOf(visit, fact, at),
        message: `${bowl} goes on ${on.zone}, and the note leaves ${zone} out.`,
        todo: `Take ${zone} out of one of the two lines, or say which part of it was left: \`zone whorl "…"\`.`,
        label: 'left out and placed',
        also: [{ place: on.place, says: 'placed here' }],
      };
      break;
    }
  }
}

export default defineRule({
  name: 'zone-left-and-placed',
  family: 'placement',
  severity: 'fix',
  bears: 'that-day',
  over: 'visit',
  looksAt: { words: ['leave'] },
  what: 'A zone is left out on purpose, and a bowl is put on it at the same visit; where one lightens, one that lightens.',
  why: 'Next time nobody can tell whether that hair was coloured.',
  source: { kind: 'notation' },
  check: found,
  bad: `
    range neon "Kelp direct" semi
      mix none
      shades teal
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 neon teal
      place A top, crown
      leave crown "stands up"
            ^^^^^`,
  good: `
    range neon "Kelp direct" semi
      mix none
      shades teal
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 neon teal
      place A top
      leave crown "stands up"`,
});
