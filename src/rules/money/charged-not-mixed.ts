import type { Journal } from '../../journal/journal.ts';
import { bowlsPutOn } from '../../reckon/bowl/applied.ts';
import { portionsIn } from '../../reckon/bowl/contents.ts';
import { wordsPlace } from '../../reckon/cite.ts';
import { isAt } from '../../reckon/head/hair-meets.ts';
import { zonesOfBowl } from '../../reckon/head/services.ts';
import type { BowlReckoned, VisitReckoned } from '../../reckon/model.ts';
import type { Kind } from '../../trade/kinds.ts';
import { moneyText } from '../money-text.ts';
import { defineRule, NONE } from '../rule.ts';

type Service = { readonly words: RegExp; readonly kinds: readonly Kind[]; readonly says: string };

/** Items that plainly name what is mixed for them: trade words, no source. `foils` does not; they hold any colour. */
const SERVICES: readonly Service[] = [
  {
    words: /^(?:(?:root|roots|ends|lengths|express|extra)\s)?(?:toner|toning|gloss|glossing|glaze)$/iu,
    kinds: ['toner', 'demi', 'semi', 'temporary', 'filler'],
    says: 'toner, demi, semi or gloss',
  },
  {
    words: /^(?:(?:root|roots|full-head|scalp)\s)?(?:lightener|lightening|double[- ]process)$/iu,
    kinds: ['lightener', 'high-lift', 'remover'],
    says: 'lightener',
  },
];

/** Permanent colour is used as a toner too, away from the roots alone. */
const isTonedBy = (visit: VisitReckoned, bowl: BowlReckoned): boolean => {
  const zones = zonesOfBowl(visit, bowl.name);
  return (
    portionsIn(bowl).some(({ item }) => item?.kind === 'permanent' || item?.kind === 'high-lift') &&
    (zones.length === 0 || zones.some((zone) => !isAt(zone, 'roots')))
  );
};

const isMixed = (visit: VisitReckoned, { kinds }: Service): boolean =>
  bowlsPutOn(visit).some(
    (bowl) =>
      // What the shelf does not know may be anything.
      portionsIn(bowl).some(({ item, role }) =>
        item?.kind === undefined ? role !== 'water' : kinds.includes(item.kind),
      ) ||
      (kinds.includes('toner') && isTonedBy(visit, bowl)),
  );

/** Whether an item is sold by that name, and so is no service. */
const isGoods = ({ shelf }: Journal, item: string): boolean => shelf.get(item)?.kind === 'goods';

export default defineRule({
  name: 'charged-not-mixed',
  family: 'money',
  severity: 'mind',
  bears: 'never',
  over: 'visit',
  looksAt: { words: ['charge'] },
  what: 'A toner, a gloss or lightening is charged for, and none of the bowls of the visit holds such a product.',
  why: 'Either a bowl is missing from the notes, or the client paid for what was not done.',
  source: { kind: 'notation' },
  check(visit, { journal }) {
    const { money, bowls } = visit;
    // Notes of money alone have no bowls.
    if (bowls.length === 0 || money.charged <= 0) return NONE;
    for (const { item, amount, place } of money.items) {
      const service = SERVICES.find(({ words }) => words.test(item));
      if (service === undefined || amount <= 0 || isGoods(journal, item) || isMixed(visit, service)) continue;
      return [
        {
          place: wordsPlace(journal, place, /charge[^"#]*[^"#\s]/iu),
          message: `${moneyText(amount, money.currency)} is charged for ${item}, and no bowl of the visit holds ${service.says}.`,
          todo: `Write the bowl that was mixed, or take \`${item}\` out; if it stands, why: \`because charged-not-mixed "…"\`.`,
          label: 'no such bowl',
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
      place A top
      on A top for 35min
      result top 9
      charge foils 60
      charge toner 26
      ^^^^^^^^^^^^^^^`,
  good: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-6
      place A top
      on A top for 35min
      result top 9
      charge foils 60`,
});
