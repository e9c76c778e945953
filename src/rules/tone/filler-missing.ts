import { bowlsPutOn } from '../../reckon/bowl/applied.ts';
import { itemsIn, placeInBowl } from '../../reckon/bowl/contents.ts';
import { blendOf, declaredTones, type Shaded, shadesIn, shadesText } from '../../reckon/bowl/shade-blend.ts';
import { greyShare, lightenedBefore, placingsOf, zonesOfBowl } from '../../reckon/client/state.ts';
import { borneOut, isDenied } from '../../reckon/hair/borne-out.ts';
import { anyMeetLoosely } from '../../reckon/head/hair-meets.ts';
import { depthsAt, depthText, isAway, meets, naturalDepth, type SeenDepth } from '../../reckon/head/seen-at.ts';
import type { BowlReckoned, VisitReckoned } from '../../reckon/model.ts';
import { figure } from '../../reckon/say.ts';
import { exact, roundTo, toNumber } from '../../text/exact.ts';
import { temperatureOf } from '../../trade/neutralise.ts';
import { toneFamily } from '../../trade/tone.ts';
import { type Desk, defineRule, type Found, NONE } from '../rule.ts';

/** What filled hair does not turn: what speaks of green, or of a colour that does not hold. */
const TURNED = /\b(?:green\w*|khaki|mudd?y|murky|hollow|drab|faded|washed out)\b/iu;

/** Depths darker from which lightened hair is filled first: common practice, no source. */
const DARKER = 3;

/** Depths darker from which it turns whatever the shade: a choice. */
const FAR = 4;

/** Depths lighter than her own from which hair is lightened, though no note says by whom: a choice. */
const LIGHTER = 2;

/** The least part of a bowl's colour that is warm and still fills; a splash is none. Common practice, no source. */
const LEAST_WARM = 0.2;

/** The share of grey in per cent from which light hair may be white and not lightened: a choice. */
const MOSTLY_GREY = 50;

const TINTS: readonly (string | undefined)[] = ['permanent', 'demi'];

/** Techniques that leave hair between: what goes darker there is a lowlight, and the blonde beside it stays. */
const LEAVES_BETWEEN: ReadonlySet<string | undefined> = new Set(['weave', 'fine-weave', 'babylight', 'slice']);

const holds = (bowl: BowlReckoned, ...kinds: readonly (string | undefined)[]): boolean =>
  itemsIn(bowl).some(({ kind }) => kind !== undefined && kinds.includes(kind));

const temperaturesOf = (portion: Shaded): readonly (string | undefined)[] =>
  declaredTones(portion).map((word) => {
    const family = toneFamily(word);
    return family && temperatureOf(family);
  });

/** The part of a bowl's colour that is warm by tones that the range itself declares; a first tone tells, a second half. */
const warmPart = (bowl: BowlReckoned): number => {
  let [all, warm] = [0, 0];
  for (const portion of shadesIn(bowl)) {
    const weight = portion.weight === undefined ? 1 : toNumber(portion.weight);
    const [first, ...rest] = temperaturesOf(portion);
    all += weight;
    if (first === 'warm') warm += weight;
    else if (rest.includes('warm')) warm += weight / 2;
  }
  return all === 0 ? 0 : warm / all;
};

/** Whether a bowl's colour is cool, but for a splash: on yellow it turns green. */
const isCool = (bowl: BowlReckoned): boolean => {
  let [all, cool] = [0, 0];
  for (const portion of shadesIn(bowl)) {
    const weight = portion.weight === undefined ? 1 : toNumber(portion.weight);
    all += weight;
    if (temperaturesOf(portion)[0] === 'cool') cool += weight;
  }
  return all > 0 && cool / all > 1 - LEAST_WARM;
};

/** Whether a bowl puts warmth where another goes: a filler, or enough of a warm shade. */
const fills = (visit: VisitReckoned, bowl: BowlReckoned, zones: readonly string[]): boolean =>
  (holds(bowl, 'filler') || (holds(bowl, ...TINTS, 'toner', 'semi') && warmPart(bowl) >= LEAST_WARM)) &&
  anyMeetLoosely(zonesOfBowl(visit, bowl.name), zones, visit.salon.zones);

/** Whether a bowl goes in lowlights, with hair left between. */
const isLowlight = (visit: VisitReckoned, bowl: BowlReckoned): boolean => {
  const placed = placingsOf(visit.visit, bowl.name);
  return placed.length > 0 && placed.every(({ technique }) => LEAVES_BETWEEN.has(technique?.word));
};

/** The lengths that a bowl takes far darker, lightened or not. */
const farFrom = (visit: VisitReckoned, depth: number): readonly SeenDepth[] =>
  depthsAt(visit, 'start').filter(
    ({ zone, depth: at }) => at.low - depth >= DARKER && (zone === '' || zone === 'all' || isAway(zone)),
  );

/** Whether hair at the start is lighter than her own, lightened elsewhere or by the sun; white hair is grey, not light. */
const isLighterThanOwn = (visit: VisitReckoned, { zone, depth }: SeenDepth): boolean => {
  const own = naturalDepth(visit.client, zone)?.high;
  const grey = greyShare(visit.client, visit.visit)?.percent ?? 0;
  return own !== undefined && grey < MOSTLY_GREY && depth.low - own >= LIGHTER;
};

function* found(visit: VisitReckoned, { earlier, visits }: Desk): Generator<Found> {
  const bowls = bowlsPutOn(visit);
  const own = visit.salon.zones;
  for (const bowl of bowls) {
    const depth = holds(bowl, ...TINTS) ? blendOf(bowl)?.depth : undefined;
    const far = depth === undefined ? [] : farFrom(visit, toNumber(depth));
    if (depth === undefined || far.length === 0) continue;
    const zones = zonesOfBowl(visit, bowl.name);
    if (bowls.some((one) => fills(visit, one, zones))) continue;
    const lightened = lightenedBefore(visit, earlier);
    const start = far.find(
      (one) =>
        meets(one.zone, zones, own) &&
        (lightened.some((before) => meets(one.zone, before.zones, own)) || isLighterThanOwn(visit, one)),
    );
    if (start === undefined) continue;
    const [shade] = shadesIn(bowl);
    const turned = borneOut(visit, visits, TURNED);
    if (turned === undefined && isLowlight(visit, bowl)) continue;
    const splash = warmPart(bowl) > 0 ? 'too little warmth in it' : 'no warmth';
    yield {
      place: placeInBowl(bowl, (portion) => portion === shade),
      ...((turned !== undefined ||
        ((isCool(bowl) || start.depth.low - toNumber(depth) >= FAR) && !isDenied(visit, visits, TURNED))) && {
        severity: 'fix' as const,
      }),
      message: `Bowl ${bowl.name} takes lightened hair from ${depthText(start.depth)} to ${figure(roundTo(depth, exact(1, 10)))} with ${shadesText(bowl)}, and ${splash}${turned === undefined ? '' : `; it came out “${turned}”`}.`,
      expected: `From ${DARKER} depths darker, lightened hair is filled with warmth first (common practice).`,
      todo: 'Write the filler or the warm shade that went with it, or the reason: `because filler-missing "…"`.',
      label: warmPart(bowl) > 0 ? 'little warm in it' : 'nothing warm in it',
      also: [{ place: start.place, says: 'starts here' }],
    };
  }
}

export default defineRule({
  name: 'filler-missing',
  family: 'tone',
  severity: 'mind',
  bears: 'that-day',
  over: 'visit',
  what: 'Lightened hair is taken three depths or more darker with no filler there and hardly a warm shade; `fix` with cool shades alone, from four depths, or where it is noted to have turned. Lowlights with hair left between are none.',
  why: 'The warmth that was taken out is missing under the new colour: it turns green or grey and fades in days.',
  source: { kind: 'common practice' },
  check: (visit, desk) => (depthsAt(visit, 'start').length > 0 ? found(visit, desk) : NONE),
  bad: `
    product act "Activator" developer 1.9%
    range gloss "Tidewater gloss" demi
      tones 0 natural, 1 ash, 3 gold
    client wren-abbott "Wren Abbott"
      test skin 2026-09-01 11:00 gloss read 2026-09-03 11:30 clear
      history 2026-03 lightener lengths
    visit 2026-09-04 wren-abbott
      start lengths 9
      bowl A 30 gloss 6/0 + 60 act
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
