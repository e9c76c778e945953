import type { SalonSettings } from '../../journal/salon.ts';
import type { ShelfItem } from '../../journal/shelf.ts';
import type { Stood } from '../../journal/source.ts';
import type { Visit, VisitFact } from '../../records/schema/entry.ts';
import type { Amount } from '../../records/schema/values.ts';
import { type Exact, exactOf, mul, ZERO } from '../../text/exact.ts';
import type { ProductUse } from '../model.ts';
import { dayOf } from './plan.ts';
import { gramPrice, packGrams, packOn, piecePrice } from './price.ts';
import { weigh } from './weighing.ts';

type Used = { readonly item: ShelfItem; readonly shade: string | undefined; readonly amount: Amount };

const NONE: readonly Used[] = [];

const usedOf = (
  shelf: ReadonlyMap<string, ShelfItem>,
  name: string | undefined,
  amount: Amount | undefined,
  shade?: string,
): readonly Used[] => {
  const item = name === undefined ? undefined : shelf.get(name);
  return item === undefined || amount === undefined ? NONE : [{ item, shade, amount }];
};

/** Products that a line uses outside any bowl, where it says how much. */
const usedBy = (fact: VisitFact, shelf: ReadonlyMap<string, ShelfItem>): readonly Used[] => {
  switch (fact.word) {
    case 'home':
      return fact.parts.flatMap(({ product, amount, shade, second, out }) =>
        out === undefined ? usedOf(shelf, product?.name, amount, shade?.shade ?? second?.name) : NONE,
      );
    case 'fit':
      return usedOf(shelf, fact.product?.name, fact.amount, fact.shade?.shade);
    case 'wash':
    case 'rinse':
    case 'dry':
    case 'cut':
      return fact.words.flatMap(({ word }) => usedOf(shelf, word, fact.amount)).slice(0, 1);
    default:
      return NONE;
  }
};

/** Pieces of goods that are sold by the piece; a pack holds as many as its line says. */
const piecesOf = ({ item, amount }: Used, date: string): Exact | undefined => {
  const pack = packOn(item, date);
  if (pack?.amount.unit !== 'each') return undefined;
  if (amount.unit === 'pack') return mul(exactOf(amount.value), exactOf(pack.amount.value));
  return amount.unit === 'each' || amount.unit === '' ? exactOf(amount.value) : undefined;
};

/**
 * What a visit uses outside its bowls: washes, goods fitted on her, what goes home. Grams, or pieces of goods sold by the
 * piece, with the cost in exact minor units. A line that does not say how much counts nothing.
 */
export const looseUses = (
  shelf: ReadonlyMap<string, ShelfItem>,
  salon: SalonSettings,
  visit: Stood<Visit>,
): ProductUse[] => {
  const date = dayOf(visit);
  const uses: ProductUse[] = [];
  for (const fact of visit.entry.facts) {
    const ofFact = usedBy(fact, shelf);
    if (ofFact.length === 0) continue;
    for (const used of ofFact) {
      const { item, shade, amount } = used;
      const use = { product: item.name, shade, left: ZERO };
      const pieces = piecesOf(used, date);
      if (pieces !== undefined) {
        const price = piecePrice(item, date, salon.currency);
        uses.push({ ...use, mixed: pieces, used: pieces, cost: price && mul(price, pieces), pieces: true });
        continue;
      }
      const pack = packOn(item, date);
      const weighing = weigh(amount, item, item.name, salon, pack && packGrams(item, pack, salon));
      if (weighing.kind !== 'grams') continue;
      const price = gramPrice(item, date, salon);
      const { grams } = weighing;
      uses.push({ ...use, mixed: grams, used: grams, cost: price && mul(price, grams) });
    }
  }
  return uses;
};
