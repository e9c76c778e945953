import type { Shared } from '../../journal/join.ts';
import type { Stood } from '../../journal/source.ts';
import { packOn } from '../../reckon/bowl/price.ts';
import { citeLine, placeOf } from '../../reckon/cite.ts';
import type { Stock } from '../../records/schema/entry.ts';
import type { In } from '../../records/schema/shelf.ts';
import { sentence } from '../../text/sentence.ts';
import { priceText } from '../money-text.ts';
import { defineRule } from '../rule.ts';

/** The latest line of each product that says what a pack of it cost. */
const lastPaid = ({
  stocks,
}: Shared): ReadonlyMap<string, { readonly stood: Stood<Stock>; readonly fact: In; readonly price: number }> => {
  const last = new Map<string, { stood: Stood<Stock>; fact: In; price: number }>();
  for (const stood of stocks)
    for (const fact of stood.entry.facts)
      if (fact.word === 'in' && fact.price !== undefined)
        last.set(fact.product.name, { stood, fact, price: fact.price });
  return last;
};

export default defineRule({
  name: 'price-differs',
  family: 'shelf',
  severity: 'mind',
  bears: 'never',
  over: 'shelf',
  what: 'A product last came in at another price than its `pack` line gives for that day.',
  why: 'What the bowls cost is worked out from the `pack` line, and an old price makes every one too cheap.',
  source: { kind: 'shelf', cites: 'its `pack` line' },
  *check(shared) {
    for (const [name, { stood, fact, price }] of lastPaid(shared)) {
      const item = shared.shelf.get(name);
      const date = stood.entry.date?.date;
      const pack = item && date && packOn(item, date);
      if (!item || !date || !pack || pack.price === undefined || pack.price === price) continue;
      const { value, unit } = pack.amount;
      const written = (amount: number): string => priceText(amount, shared.salon.currency);
      yield {
        place: placeOf(stood, fact, fact.product.at),
        message: `A pack of \`${name}\` came in at ${written(price)}, and the shelf says ${written(pack.price)}.`,
        expected: sentence`The price is from ${citeLine(item, pack)}.`,
        todo: `Where the price has changed, write \`pack ${value} ${unit} ${written(price)} from ${date}\` under \`${name}\`.`,
        also: [{ place: placeOf(item.stood, pack, pack.amount.at), says: 'the price in force' }],
      };
    }
  },
  bad: `
    product clay "Peregrine clay" lightener
      pack 500 g 24.00
    stock 2026-08-01
      in clay 2 packs 25.50
         ^^^^`,
  good: `
    product clay "Peregrine clay" lightener
      pack 500 g 24.00
      pack 500 g 25.50 from 2026-08-01
    stock 2026-08-01
      in clay 2 packs 25.50`,
});
