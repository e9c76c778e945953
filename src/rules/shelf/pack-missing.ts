import type { Stood } from '../../journal/source.ts';
import { placeOf } from '../../reckon/cite.ts';
import type { Stock } from '../../records/schema/entry.ts';
import type { Amount } from '../../records/schema/values.ts';
import { defineRule } from '../rule.ts';

type Counted = { readonly product: string; readonly amount: Amount; readonly line: number };

const inPacks = ({ entry }: Stood<Stock>): Counted[] =>
  entry.facts.flatMap((fact) =>
    (fact.word === 'in' || fact.word === 'count' || fact.word === 'out') && fact.amount?.unit === 'pack'
      ? [{ product: fact.product.name, amount: fact.amount, line: fact.line }]
      : [],
  );

export default defineRule({
  name: 'pack-missing',
  family: 'shelf',
  severity: 'fix',
  bears: 'never',
  over: 'shelf',
  what: 'Stock is counted in packs of a product whose entry does not say what a pack holds.',
  why: 'Without it packs cannot be set against the grams that were mixed, and nothing can be said of what is left.',
  source: { kind: 'notation' },
  *check({ shelf, stocks }) {
    const said = new Set<string>();
    for (const stood of stocks) {
      for (const { product, amount, line } of inPacks(stood)) {
        const item = shelf.get(product);
        if (item === undefined || item.packs.length > 0 || said.has(product)) continue;
        said.add(product);
        yield {
          place: placeOf(stood, { line }, amount.at),
          message: `\`${product}\` is counted in packs, and its entry gives no pack.`,
          todo: `Write its size under \`${product}\`, as in \`pack 500 g\`, or the stock in grams.`,
        };
      }
    }
  },
  bad: `
    product clay "Peregrine clay" lightener
    stock 2026-08-01
      count clay 2 packs
                 ^^^^^^^`,
  good: `
    product clay "Peregrine clay" lightener
      pack 500 g
    stock 2026-08-01
      count clay 2 packs`,
});
