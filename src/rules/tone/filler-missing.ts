import type { BowlReckoned, VisitReckoned } from '../../reckon/model.ts';
import { figure } from '../../reckon/say.ts';
import { zonesOfBowl } from '../../reckon/services.ts';
import { lightenedBefore } from '../../reckon/state.ts';
import { exactOf, toNumber } from '../../text/exact.ts';
import { temperatureOf } from '../../trade/neutralise.ts';
import { bowlsPutOn } from '../applied.ts';
import { borneOut } from '../borne-out.ts';
import { itemsIn, placeInBowl } from '../contents.ts';
import { defineRule, type Found } from '../rule.ts';
import { depthsAt, depthText, isAway, meets, type SeenDepth } from '../seen-at.ts';
import { blendOf, shadesIn, shadesText } from '../shade-blend.ts';

/** What filled hair does not turn: what speaks of green, or of a colour that does not hold. */
const TURNED = /\b(?:green\w*|khaki|mudd?y|murky|hollow|drab|faded|washed out)\b/iu;

/** Depths darker from which lightened hair is filled first: common practice, no source. */
const DARKER = 3;

const isWarm = (bowl: BowlReckoned): boolean =>
  blendOf(bowl)?.tones.some(({ family }) => temperatureOf(family) === 'warm') === true;

const holds = (bowl: BowlReckoned, ...kinds: readonly string[]): boolean =>
  itemsIn(bowl).some(({ kind }) => kind !== undefined && kinds.includes(kind));

/** The lengths that a bowl takes far darker, lightened or not. */
const farFrom = (visit: VisitReckoned, depth: number): readonly SeenDepth[] =>
  depthsAt(visit, 'start').filter(
    ({ zone, depth: at }) => at.low - depth >= DARKER && (zone === '' || zone === 'all' || isAway(zone)),
  );

function* found(visit: VisitReckoned, visits: readonly VisitReckoned[]): Generator<Found> {
  const bowls = bowlsPutOn(visit);
  const own = visit.salon.zones;
  for (const bowl of bowls) {
    const depth = holds(bowl, 'permanent', 'demi') ? blendOf(bowl)?.depth : undefined;
    const far = depth === undefined ? [] : farFrom(visit, toNumber(depth));
    if (depth === undefined || far.length === 0) continue;
    if (bowls.some((one) => holds(one, 'filler') || isWarm(one))) return;
    const zones = zonesOfBowl(visit, bowl.name);
    const lightened = lightenedBefore(visit.client, visits.slice(0, visits.indexOf(visit)), visit.date);
    const start = far.find(
      ({ zone }) => meets(zone, zones, own) && lightened.some((before) => meets(zone, before.zones, own)),
    );
    if (start === undefined) continue;
    const [shade] = shadesIn(bowl);
    const turned = borneOut(visit, visits, TURNED);
    yield {
      place: placeInBowl(bowl, (portion) => portion === shade),
      ...(turned !== undefined && { severity: 'fix' as const }),
      message: `Bowl ${bowl.name} takes lightened hair from ${depthText(start.depth)} to ${figure(exactOf(toNumber(depth)))} with ${shadesText(bowl)}, and no warmth${turned === undefined ? '' : `; it came out “${turned}”`}.`,
      expected: `From ${DARKER} depths darker, lightened hair is filled with warmth first (common practice).`,
      todo: 'Write the filler or the warm shade that went with it, or the reason: `because filler-missing "…"`.',
      label: 'nothing warm in it',
      also: [{ place: start.place, says: 'starts here' }],
    };
  }
}

export default defineRule({
  name: 'filler-missing',
  family: 'tone',
  severity: 'mind',
  bears: 'that-day',
  over: 'client',
  what: 'Lightened hair is taken three depths or more darker with no filler and no warm shade anywhere in the visit; `fix` where it is noted to have turned.',
  why: 'The warmth that was taken out is missing under the new colour: it turns green or grey and fades in days.',
  source: { kind: 'common practice' },
  *check(_client, visits: readonly VisitReckoned[]) {
    for (const visit of visits) if (depthsAt(visit, 'start').length > 0) yield* found(visit, visits);
  },
  bad: `
    product act "Activator" developer 1.9%
    range gloss "Tidewater gloss" demi
      tones 0 natural, 1 ash, 3 gold
    client wren-abbott "Wren Abbott"
      test skin 2026-09-01 11:00 gloss read 2026-09-03 11:30 clear
      history 2026-03 lightener lengths
    visit 2026-09-04 wren-abbott
      start lengths 9
      bowl A 30 gloss 5/1 + 60 act
             ^^^^^^^^^^^^
      place A lengths`,
  good: `
    product act "Activator" developer 1.9%
    range gloss "Tidewater gloss" demi
      tones 0 natural, 1 ash, 3 gold
    client wren-abbott "Wren Abbott"
      test skin 2026-09-01 11:00 gloss read 2026-09-03 11:30 clear
      history 2026-03 lightener lengths
    visit 2026-09-04 wren-abbott
      start lengths 9
      bowl A 20 gloss 5/0 + 10 gloss 5/3 + 60 act
      place A lengths`,
});
