import { exact, largestRemainder, ONE, roundTo, sum, toNumber, ZERO } from '../../text/exact.ts';
import { pairs } from '../../text/pairs.ts';
import { isCutAlone } from '../../trade/cut-words.ts';
import type { VisitReckoned } from '../model.ts';
import { isDiscount, minorUnits, shareOf } from './money.ts';

/** One thing charged for at a visit, in minor units. */
export type ChargedItem = {
  /** As typed but in lower case; empty for a visit that charged for nothing, `UNNAMED` for a price by no name. */
  readonly item: string;
  /** The price less its part of the discounts. */
  readonly charged: number;
  readonly discount: number;
  /** Its part of what the visit’s products cost. */
  readonly cost: number;
};

/** The service of a price that stands alone: `charge 185`. No item can be typed so. */
export const UNNAMED = '-';

/** Shares out whole minor units by weights, to the last one; evenly where all weights are nought. */
const sharedOut = (amount: number, weights: readonly number[]): number[] => {
  const even = weights.every((weight) => weight <= 0);
  const parts = weights.map((weight) => (even ? ONE : exact(Math.max(0, weight))));
  return largestRemainder(parts, exact(amount), ONE).map(toNumber);
};

/** What each item comes to after the discounts below it, in the order of the note. */
const afterDiscounts = ({ visit, money }: VisitReckoned): { item: string; charged: number; discount: number }[] => {
  let items: { item: string; charged: number; discount: number }[] = [];
  for (const fact of visit.entry.facts) {
    if (fact.word !== 'charge' || fact.total) continue;
    const typed = minorUnits(fact.amount ?? 0, money.currency);
    if (!isDiscount(fact)) {
      items.push({ item: fact.item || UNNAMED, charged: typed, discount: 0 });
      continue;
    }
    const above = items.reduce((whole, { charged }) => whole + charged, 0);
    const off = fact.discount === undefined ? typed : shareOf(fact.discount, above);
    if (items.length === 0) items.push({ item: '', charged: 0, discount: 0 });
    const shares = sharedOut(
      off,
      items.map(({ charged }) => charged),
    );
    items = pairs(items, shares).map(([{ item, charged, discount }, share]) => ({
      item,
      charged: charged - share,
      discount: discount + share,
    }));
  }
  return items;
};

/** Minor units of all that a visit used and that has a price, rounded once. */
export const knownCost = ({ money, uses }: VisitReckoned): number =>
  money.cost ?? toNumber(roundTo(sum(uses.map(({ cost }) => cost ?? ZERO)), ONE));

/**
 * What a visit charged for, item by item, with the discounts and the cost of its products shared out so that they add
 * up to the visit’s own. Goods sold by the piece and charged for by name bear their own cost, a cut or a blow-dry none
 * beside other work; the rest is shared by price, which is a convention: the notes do not say which service a bowl was mixed for.
 */
export const chargedItems = (visit: VisitReckoned): ChargedItem[] => {
  const items = afterDiscounts(visit);
  const cost = knownCost(visit);
  if (items.length === 0) return [{ item: '', charged: 0, discount: 0, cost }];
  const names = items.map(({ item }) => item);
  let rest = cost;
  const withOwn = items.map((item, index) => {
    if (names.indexOf(item.item) !== index) return { item, own: 0 };
    const goods = visit.uses.filter(({ product, pieces }) => pieces && product === item.item);
    const whole = toNumber(roundTo(sum(goods.map((use) => use.cost ?? ZERO)), ONE));
    const own = Math.min(whole, rest);
    rest -= own;
    return { item, own };
  });
  const work = withOwn.filter(({ item, own }) => own === 0 && !isCutAlone(item.item));
  const isFree = work.every(({ item }) => item.charged <= 0);
  const shares = sharedOut(
    rest,
    withOwn.map((one) => {
      // Where nothing but cuts and goods was charged, what was used can have been for them alone.
      if (work.length === 0) return one.own === 0 ? one.item.charged : 0;
      if (!work.includes(one)) return 0;
      return isFree ? 1 : one.item.charged;
    }),
  );
  return pairs(withOwn, shares).map(([{ item, own }, share]) => ({ ...item, cost: own + share }));
};
