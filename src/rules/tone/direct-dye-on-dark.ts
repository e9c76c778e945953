import { bowlsPutOn } from '../../reckon/bowl/applied.ts';
import { placeInBowl } from '../../reckon/bowl/contents.ts';
import { mixesLightening } from '../../reckon/bowl/kinds-mixed.ts';
import { shadesIn } from '../../reckon/bowl/shade-blend.ts';
import { lightenedBefore } from '../../reckon/client/state.ts';
import { depthText, meets, seenAt, startsAt } from '../../reckon/head/seen-at.ts';
import { zonesOfBowl } from '../../reckon/head/services.ts';
import type { BowlReckoned, VisitReckoned } from '../../reckon/model.ts';
import { OPPOSITES, toneFamily } from '../../trade/tone.ts';
import { defineRule, type Found, foundEach, NONE } from '../rule.ts';

/** The darkest depth that a bright direct dye is seen on: common practice, no source. */
const DARKEST = 6;

const isBright = (shade: string): boolean =>
  shade !== 'clear' && !shade.includes('/') && toneFamily(shade) !== 'neutral';

const foundIn = (visit: VisitReckoned, bowl: BowlReckoned, earlier: readonly VisitReckoned[]): Found | undefined => {
  const bright = shadesIn(bowl).find(({ item, shade }) => item.kind === 'semi' && isBright(shade));
  if (bright === undefined) return undefined;
  const zones = zonesOfBowl(visit, bowl.name);
  const starts = startsAt(visit, zones);
  const [dark] = starts;
  if (dark === undefined || starts.some(({ depth }) => depth.high > DARKEST)) return undefined;
  const own = visit.salon.zones;
  const lightened = lightenedBefore(visit, earlier);
  if (lightened.some((before) => before.zones.length === 0 || before.zones.some((zone) => meets(zone, zones, own))))
    return undefined;
  // What her hair did outweighs the rule.
  const shows = seenAt(visit, 'result').filter(({ zone }) => meets(zone, zones, own));
  if (shows.some(({ seen }) => seen.words.some(({ word }) => Object.hasOwn(OPPOSITES, toneFamily(word) ?? ''))))
    return undefined;
  return {
    place: placeInBowl(bowl, (portion) => portion === bright),
    message: `Bowl ${bowl.name} is ${bright.label}, on depth ${depthText(dark.depth)} that was not lightened.`,
    expected: `Bright direct dye shows on lightened hair, or lighter than depth ${DARKEST} (common practice; a rough guide).`,
    todo: 'Write the lightening that went first, or the depth as it was.',
    label: `on depth ${depthText(dark.depth)}`,
    also: [{ place: dark.place, says: 'the depth it goes on' }],
  };
};

export default defineRule({
  name: 'direct-dye-on-dark',
  family: 'tone',
  severity: 'mind',
  bears: 'that-day',
  over: 'visit',
  looksAt: { kinds: ['semi'] },
  what: 'A bright direct dye goes on hair of depth 6 or darker that nothing has lightened.',
  why: 'Direct dye lightens nothing: on dark hair it is a shine in the sun at most.',
  source: { kind: 'common practice' },
  check: (visit, { earlier }) =>
    !mixesLightening(visit) ? foundEach(bowlsPutOn(visit), (bowl) => foundIn(visit, bowl, earlier)) : NONE,
  bad: `
    range neon "Kelp direct" semi
      mix none
      shades teal
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      start lengths 4
      bowl A 30 neon teal
             ^^^^^^^^^^^^
      place A lengths`,
  good: `
    range neon "Kelp direct" semi
      mix none
      shades teal
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      start lengths 9
      bowl A 30 neon teal
      place A lengths`,
});
