import { placeInBowl } from '../../reckon/bowl/contents.ts';
import { shadesIn } from '../../reckon/bowl/shade-blend.ts';
import { borneOut } from '../../reckon/hair/borne-out.ts';
import { overColour } from '../../reckon/hair/over-colour.ts';
import { depthsAt, depthText, meets, type SeenDepth } from '../../reckon/head/seen-at.ts';
import type { VisitReckoned } from '../../reckon/model.ts';
import { figure } from '../../reckon/say.ts';
import { exactOf } from '../../text/exact.ts';
import { defineRule, foundEach } from '../rule.ts';

/** What speaks of roots that lifted while the lengths did not. */
const NOT_LIFTED =
  /\b(?:warm\w*|orange|brass\w*|hot roots|patch\w*|uneven|band(?:s|ed|ing)?|(?:did not|didn.t|no) lift\w*|dark(?:er)? lengths)\b/iu;

/** Whether the note wants a place lighter than it was found: then the colour is meant to lift it. */
const isToLift = (visit: VisitReckoned, start: SeenDepth): boolean =>
  depthsAt(visit, 'want').some(
    ({ zone, depth }) => depth.low > start.depth.high && meets(start.zone, [zone], visit.salon.zones),
  );

export default defineRule({
  name: 'colour-over-colour',
  family: 'lift',
  severity: 'mind',
  bears: 'that-day',
  over: 'visit',
  what: 'Permanent colour goes on lengths that were coloured before, and its depth is lighter by one and a half or more; `fix` where they are wanted lighter, or noted not to have lifted.',
  why: 'Colour does not lift colour: the roots turn light and the lengths stay as they were.',
  source: { kind: 'common practice' },
  check: (visit, { earlier, visits }) =>
    foundEach(overColour(visit, earlier), ({ bowl, shade, start, before }) => {
      const [first] = shadesIn(bowl);
      const came = borneOut(visit, visits, NOT_LIFTED);
      return {
        ...((came !== undefined || isToLift(visit, start)) && { severity: 'fix' as const }),
        place: placeInBowl(bowl, (portion) => portion === first),
        message: `Bowl ${bowl.name} is depth ${figure(exactOf(shade))}; ${start.zone}, coloured before, start at ${depthText(start.depth)}${came === undefined ? '' : `; it came out “${came}”`}.`,
        expected: 'Colour does not lift colour (common practice).',
        todo: 'Write the remover or lightener that went first, or another shade for these lengths.',
        label: `over coloured depth ${depthText(start.depth)}`,
        also: [
          { place: start.place, says: 'starts here' },
          { place: before.place, says: 'coloured here' },
        ],
      };
    }),
  bad: `
    product dev-9 "Cream developer" developer 9%
    range cream "Larkfield cream" permanent
    client wren-abbott "Wren Abbott"
      test skin 2026-09-01 11:00 cream read 2026-09-03 11:30 clear
      history 2026-03 box-colour lengths
    visit 2026-09-04 wren-abbott
      start lengths 4
      bowl A 40 cream 7/3 + 60 dev-9
             ^^^^^^^^^^^^
      place A lengths`,
  good: `
    product dev-9 "Cream developer" developer 9%
    range cream "Larkfield cream" permanent
    client wren-abbott "Wren Abbott"
      test skin 2026-09-01 11:00 cream read 2026-09-03 11:30 clear
      history 2026-03 box-colour lengths
    visit 2026-09-04 wren-abbott
      start lengths 4
      bowl A 40 cream 5/3 + 60 dev-9
      place A lengths`,
});
