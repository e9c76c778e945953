import { bowlsPutOn } from '../../reckon/bowl/applied.ts';
import { itemsIn, placeInBowl } from '../../reckon/bowl/contents.ts';
import { depthText, startsAt } from '../../reckon/head/seen-at.ts';
import { zonesOfBowl } from '../../reckon/head/services.ts';
import type { BowlReckoned, VisitReckoned } from '../../reckon/model.ts';
import { HIGH_LIFT_FROM } from '../../trade/lift-guide.ts';
import { defineRule, type Found } from '../rule.ts';

const foundIn = (visit: VisitReckoned, bowl: BowlReckoned): readonly Found[] => {
  // Where the shelf claims lift, the claim is the better measure.
  const item = itemsIn(bowl).find(({ kind, lift }) => kind === 'high-lift' && lift === undefined);
  if (item === undefined) return [];
  const start = startsAt(visit, zonesOfBowl(visit, bowl.name)).find(({ depth }) => depth.high < HIGH_LIFT_FROM);
  if (start === undefined) return [];
  return [
    {
      place: placeInBowl(bowl, (portion) => portion.item === item),
      message: `Bowl ${bowl.name} is high-lift; the depth it goes on is ${depthText(start.depth)}.`,
      expected: `High-lift shades are for depth ${HIGH_LIFT_FROM} and lighter (common practice; a rough guide).`,
      todo: 'Write what was used, or give the maker’s claim on the shelf, as in `lift 12% 4-5`.',
      label: `on depth ${depthText(start.depth)}`,
      also: [{ place: start.place, says: 'the depth it goes on' }],
    },
  ];
};

const found = (visit: VisitReckoned): readonly Found[] => bowlsPutOn(visit).flatMap((bowl) => foundIn(visit, bowl));

export default defineRule({
  name: 'high-lift-on-dark',
  family: 'lift',
  severity: 'mind',
  bears: 'that-day',
  over: 'visit',
  looksAt: { kinds: ['high-lift'] },
  what: 'A high-lift shade without a lift line goes on hair darker than depth 6.',
  why: 'High-lift shades hold little colour of their own, so dark hair is left orange.',
  source: { kind: 'common practice' },
  check: found,
  bad: `
    product dev-12 "Cream developer" developer 12%
    range high "Larkfield high" high-lift
    client wren-abbott "Wren Abbott"
      test skin 2026-09-01 11:00 high read 2026-09-03 11:30 clear
    visit 2026-09-04 wren-abbott
      start roots 4
      bowl A 30 high 10/1 + 60 dev-12
             ^^^^^^^^^^^^
      place A roots`,
  good: `
    product dev-12 "Cream developer" developer 12%
    range high "Larkfield high" high-lift
    client wren-abbott "Wren Abbott"
      test skin 2026-09-01 11:00 high read 2026-09-03 11:30 clear
    visit 2026-09-04 wren-abbott
      start roots 7
      bowl A 30 high 10/1 + 60 dev-12
      place A roots`,
});
