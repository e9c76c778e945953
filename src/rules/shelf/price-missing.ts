import type { ShelfItem } from '../../journal/shelf.ts';
import { placeOf } from '../../reckon/cite.ts';
import { defineRule } from '../rule.ts';

const isPriced = ({ packs }: ShelfItem): boolean => packs.some(({ price }) => price !== undefined);

export default defineRule({
  name: 'price-missing',
  family: 'shelf',
  severity: 'mind',
  bears: 'never',
  over: 'shelf',
  what: 'A product has no price, on a shelf where most have one.',
  why: 'A bowl with it in has no cost, nor has the visit, and a list of what the work costs leaves it out.',
  source: { kind: 'notation' },
  *check({ shelf }) {
    const items = [...shelf.values()];
    const priced = items.filter(isPriced).length;
    if (priced < 2 || priced * 2 <= items.length) return;
    for (const item of items) {
      if (isPriced(item)) continue;
      const [pack] = item.packs;
      yield {
        place: placeOf(item.stood, { line: 0 }, item.stood.entry.name?.at),
        message: `\`${item.name}\` has no price; ${priced} of the shelf’s ${items.length} have one.`,
        todo:
          pack === undefined
            ? 'Write size and price under it, as in `pack 60 g 6.80`.'
            : 'Write the price after the size, as in `pack 60 g 6.80`.',
      };
    }
  },
  bad: `
    product dev-6 "Cream developer" developer 6%
      pack 1000 g 7.50
    product bond "Mender" additive
      pack 250 g 32.00
    product clay "Peregrine clay" lightener
            ^^^^`,
  good: `
    product dev-6 "Cream developer" developer 6%
      pack 1000 g 7.50
    product bond "Mender" additive
      pack 250 g 32.00
    product clay "Peregrine clay" lightener
      pack 500 g 24.00`,
});
