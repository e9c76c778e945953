import { placeInBowl } from '../../reckon/bowl/contents.ts';
import { depthText, placeName } from '../../reckon/head/seen-at.ts';
import { figure } from '../../reckon/say.ts';
import { exactOf } from '../../text/exact.ts';
import { guideLift, HIGH_LIFT_FROM, HIGH_LIFT_MORE, LIFT_GUIDE_SOURCE } from '../../trade/lift-guide.ts';
import { gapsFound, type LiftGap } from '../lift-gap.ts';
import { defineRule, type Found } from '../rule.ts';

/** Depths beyond the guide before it is worth a word: sources disagree by about one. */
const ROOM = 1;

const foundIn = ({ bowl, item, strength, start, aim, depths, reached }: LiftGap): Found | undefined => {
  const guide = guideLift(exactOf(strength));
  if (item.kind === 'lightener' || item.lift !== undefined || guide === undefined) return undefined;
  // High-lift on dark hair has a rule of its own.
  const high = item.kind === 'high-lift';
  if (high && start.depth.high < HIGH_LIFT_FROM) return undefined;
  const most = guide.high + (high ? HIGH_LIFT_MORE : 0);
  if (depths <= most + ROOM) return undefined;
  return {
    place: aim.by === 'shade' ? placeInBowl(bowl, (portion) => portion.item === item) : aim.place,
    message: `${placeName(start.zone)}: from ${depthText(start.depth)} to ${figure(exactOf(aim.depth))}, ${figure(exactOf(depths))} depths, with ${item.name} and ${figure(exactOf(strength))} %${reached === undefined ? '' : `; the result is ${figure(exactOf(reached))}`}.`,
    expected: `About ${most} at most, a rough guide (${LIFT_GUIDE_SOURCE}).`,
    todo: 'Give the maker’s own claim on the shelf, as in `lift 6% 1-2`; a strand test shows what this hair does.',
    label: `guide: ${most}`,
    also: [{ place: start.place, says: 'starts here' }],
  };
};

export default defineRule({
  name: 'lift-beyond-guide',
  family: 'lift',
  severity: 'mind',
  bears: 'that-day',
  over: 'visit',
  what: 'Colour without a lift line is noted or meant to lift further than a rough guide gives its strength.',
  why: 'Colour that is asked to lift too far leaves warmth; the guide is rough, and what her hair did before outweighs it.',
  source: {
    kind: 'published',
    cites: 'cosmetology exam guide, page "Hair coloring and lightening"; trade educators disagree',
  },
  check: (visit, { earlier }) => gapsFound(visit, earlier, foundIn),
  bad: `
    product dev-6 "Cream developer" developer 6%
    range cream "Larkfield cream" permanent
    client wren-abbott "Wren Abbott"
      test skin 2026-09-01 11:00 cream read 2026-09-03 11:30 clear
      natural 4
    visit 2026-09-04 wren-abbott
      want roots 8
                 ^
      bowl A 40 cream 8/3 + 60 dev-6
      place A roots`,
  good: `
    product dev-6 "Cream developer" developer 6%
    range cream "Larkfield cream" permanent
    client wren-abbott "Wren Abbott"
      test skin 2026-09-01 11:00 cream read 2026-09-03 11:30 clear
      natural 4
    visit 2026-09-04 wren-abbott
      want roots 6
      bowl A 40 cream 8/3 + 60 dev-6
      place A roots`,
});
