import type { Journal } from '../../journal/journal.ts';
import { developerStrength, itemsIn } from '../../reckon/bowl/contents.ts';
import { placeOf, wordsPlace } from '../../reckon/cite.ts';
import { factsOf } from '../../reckon/facts-of.ts';
import type { BowlReckoned, VisitReckoned } from '../../reckon/model.ts';
import { figure } from '../../reckon/say.ts';
import type { Placing } from '../../records/schema/visit.ts';
import { compare, exact } from '../../text/exact.ts';
import { ON_SCALP } from '../../trade/strength.ts';
import { defineRule, type Found, NONE } from '../rule.ts';

const foundAt = (visit: VisitReckoned, bowl: BowlReckoned, placing: Placing, journal: Journal): Found | undefined => {
  const item = itemsIn(bowl).find(({ kind }) => kind === 'lightener');
  if (item === undefined || item.scalp !== undefined) return undefined;
  const strength = developerStrength(bowl);
  const isStrong = strength !== undefined && compare(strength, exact(ON_SCALP)) > 0;
  const has = strength === undefined ? '' : ` with ${figure(strength)} %`;
  return {
    place: wordsPlace(journal, placeOf(visit.visit, placing), /\bon\p{Pd}scalp\b/iu),
    severity: isStrong ? 'fix' : 'mind',
    message: `Bowl ${bowl.name}, ${item.name}${has}, is placed on the scalp, and its leaflet's limit is not on the shelf.`,
    expected: isStrong
      ? `Lightener is for the scalp with ${ON_SCALP} % at most (common practice); ${item.full} has no \`scalp\` line.`
      : `${item.full} has no \`scalp\` line: what it takes on the scalp its leaflet says.`,
    todo: `Copy the leaflet's strength under \`${item.name}\`, as in \`scalp to 6%\` or \`scalp never\`; or write \`off-scalp 1cm\`, if that is how it was placed.`,
    label: isStrong ? `with ${figure(strength)} %` : 'no limit on the shelf',
  };
};

export default defineRule({
  name: 'scalp-unlisted',
  family: 'strength',
  severity: 'fix',
  bears: 'that-day',
  over: 'visit',
  looksAt: { words: ['place'], kinds: ['lightener', 'high-lift'] },
  what: 'Lightener is placed on the scalp whose product has no scalp line: `fix` with more than 6 %, else `mind`.',
  why: 'What a lightener does to skin its maker knows; without the limit nothing here can speak of it.',
  source: { kind: 'common practice' },
  caution: 'lightener',
  check(visit, { journal }) {
    for (const placing of factsOf(visit.visit, 'place')) {
      if (placing.scalp !== 'on') continue;
      const names = placing.bowls.map(({ name }) => name.toUpperCase());
      for (const bowl of visit.bowls) {
        const found = names.includes(bowl.name) ? foundAt(visit, bowl, placing, journal) : undefined;
        if (found !== undefined) return [found];
      }
    }
    return NONE;
  },
  bad: `
    product dev-9 "Cream developer" developer 9%
    product clay "Peregrine clay" lightener
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-9
      place A roots apply on-scalp
                          ^^^^^^^^`,
  good: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
      scalp to 6%
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-6
      place A roots apply on-scalp`,
});
