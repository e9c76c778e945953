import type { VisitReckoned } from '../../reckon/model.ts';
import { figure } from '../../reckon/say.ts';
import { exactOf, toNumber } from '../../text/exact.ts';
import { placeInBowl } from '../contents.ts';
import { defineRule, type Found } from '../rule.ts';
import { placeName } from '../seen-at.ts';
import { shadesIn, shadesText } from '../shade-blend.ts';
import { isWrongOpposite, type Toning, toningsOf } from '../toning.ts';

/** Depths that a toner may be lighter than what it goes over: a choice, since stages tell a depth only roughly. */
const ROOM = 2;

function* found(toning: Toning): Generator<Found> {
  const { bowl, blend, over } = toning;
  const depth = blend.depth && toNumber(blend.depth);
  if (depth === undefined || over.some((seen) => depth - seen.depth <= ROOM)) return;
  const [lightest] = over.toSorted((a, b) => b.depth - a.depth);
  // Where the tone is wrong as well, that is the finding.
  if (lightest === undefined || isWrongOpposite(toning)) return;
  const [shade] = shadesIn(bowl);
  yield {
    place: placeInBowl(bowl, (portion) => portion === shade),
    message: `Bowl ${bowl.name} is depth ${figure(exactOf(depth))} (${shadesText(bowl)}), over ${lightest.stage}.`,
    expected:
      `${lightest.stage} is about depth ${figure(exactOf(lightest.depth))}, a rough guide (an undercoat chart).`.replace(
        /^./,
        (first) => first.toUpperCase(),
      ),
    todo: 'Write the stage it was lifted to before this went on, or the shade that was used.',
    label: `over ${lightest.stage}`,
    also: [{ place: lightest.place, says: `${placeName(lightest.zone).toLowerCase()} seen last` }],
  };
}

export default defineRule({
  name: 'toner-over-dark',
  family: 'tone',
  severity: 'mind',
  over: 'client',
  what: 'A toner is lighter than the last stage seen where it goes, by more than two depths.',
  why: 'A toner lightens nothing: over hair that is too dark it does not show, and the warmth stays.',
  source: { kind: 'published', cites: 'US training page, "Underlying pigment chart", for the depth of a stage' },
  *check(_client, visits: readonly VisitReckoned[]) {
    for (const visit of visits) for (const toning of toningsOf(visit, visits)) yield* found(toning);
  },
  bad: `
    product act "Activator" developer 1.9%
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
    range toner "Tidewater toner" toner
      tones 1 ash, 2 violet
    client wren-abbott "Wren Abbott"
      test skin 2026-09-01 11:00 toner read 2026-09-03 11:30 clear
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-6
      on 14:00 A top
      check 14:30 A top orange
      off 14:31 A
      bowl T 20 toner 9/1 + 20 act
             ^^^^^^^^^^^^
      on 14:40 T top
      off 14:50 T`,
  good: `
    product act "Activator" developer 1.9%
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
    range toner "Tidewater toner" toner
      tones 1 ash, 2 violet
    client wren-abbott "Wren Abbott"
      test skin 2026-09-01 11:00 toner read 2026-09-03 11:30 clear
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-6
      on 14:00 A top
      check 14:40 A top yellow
      off 14:41 A
      bowl T 20 toner 9/1 + 20 act
      on 14:50 T top
      off 15:00 T`,
});
