import type { ShelfItem } from '../../journal/shelf.ts';
import { developerStrength, itemsIn } from '../../reckon/bowl/contents.ts';
import { placeOf } from '../../reckon/cite.ts';
import { factsOf } from '../../reckon/facts-of.ts';
import { unsaidRoots } from '../../reckon/head/on-scalp.ts';
import type { BowlReckoned } from '../../reckon/model.ts';
import { compare, exact } from '../../text/exact.ts';
import { ON_SCALP } from '../../trade/strength.ts';
import { defineRule, NONE } from '../rule.ts';

const lightenerIn = (bowl: BowlReckoned): ShelfItem | undefined =>
  itemsIn(bowl).find(({ kind }) => kind === 'lightener');

const isStrong = (bowl: BowlReckoned): boolean => {
  const strength = developerStrength(bowl);
  return strength !== undefined && compare(strength, exact(ON_SCALP)) > 0;
};

export default defineRule({
  name: 'scalp-unsaid',
  family: 'placement',
  severity: 'mind',
  bears: 'that-day',
  over: 'visit',
  looksAt: { words: ['place'] },
  what: 'Lightener is placed on roots with neither `on-scalp` nor `off-scalp`, and its product has no scalp line; `fix` with more than 6 %.',
  why: 'On the scalp a lightener takes less strength and less time; where it lay is what its next bowl goes by.',
  source: { kind: 'common practice' },
  caution: 'lightener',
  check({ visit, bowls }) {
    if (!bowls.some(lightenerIn)) return NONE;
    for (const placing of factsOf(visit, 'place')) {
      const names = placing.bowls.map(({ name }) => name.toUpperCase());
      const bowl = bowls.find((one) => names.includes(one.name) && unsaidRoots(placing, one) !== undefined);
      const item = bowl && lightenerIn(bowl);
      const roots = bowl && unsaidRoots(placing, bowl);
      if (bowl === undefined || item === undefined || item.scalp !== undefined || roots === undefined) continue;
      return [
        {
          place: placeOf(visit, placing, roots.at),
          ...(isStrong(bowl) && { severity: 'fix' as const }),
          message: `Bowl ${bowl.name}, ${item.name}, is placed at ${roots.zone}, and no \`off-scalp\` stands: it counts as on the scalp.`,
          expected: `Roots are on the scalp unless the note says how far off; ${item.full} has no \`scalp\` line (common practice).`,
          todo: `Write \`off-scalp 1cm\` if not, else \`on-scalp\`; its leaflet's strength stands under \`${item.name}\`, as in \`scalp to 6%\`.`,
          label: 'counts as on the scalp',
        },
      ];
    }
    return NONE;
  },
  bad: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-6
      place A roots apply
              ^^^^^`,
  good: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
      scalp to 6%
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-6
      place A roots apply on-scalp`,
});
