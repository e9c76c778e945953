import type { SalonSettings } from '../../journal/salon.ts';
import type { Stood } from '../../journal/source.ts';
import type { Visit } from '../../records/schema/entry.ts';
import { add, type Exact, exact, exactOf, mul, ONE, roundTo, toNumber, ZERO } from '../../text/exact.ts';
import { placeOf } from '../cite.ts';
import { currencyDecimals } from '../currency.ts';
import type { BowlReckoned, FactsOf, MoneyReckoned, ProductUse } from '../model.ts';

/** An amount as typed, in whole minor units of the currency: halves go up. */
export const minorUnits = (amount: number, currency: string | undefined): number =>
  toNumber(roundTo(mul(exactOf(amount), exact(10 ** currencyDecimals(currency))), ONE));

/** So many per cent of an amount in minor units, rounded once: halves go up. */
export const shareOf = (percent: number, amount: number): number =>
  toNumber(roundTo(mul(exactOf(percent), exact(amount, 100)), ONE));

/** Whether a `charge` line takes off rather than on: in per cent, or an amount under a name such as `loyalty discount`. */
export const isDiscount = ({ item, discount }: FactsOf<'charge'>): boolean =>
  discount !== undefined || (item.endsWith('discount') && /(?:^|\s)discount$/u.test(item));

/** Exact minor units of all that was used; undefined when a price or a weight is missing. */
const costOf = (bowls: readonly BowlReckoned[], loose: readonly ProductUse[]): Exact | undefined => {
  let total: Exact = ZERO;
  for (const used of [bowls, loose])
    for (const { cost } of used) {
      if (cost === undefined) return undefined;
      total = add(total, cost);
    }
  return total;
};

/** What was used and has no price or no weight, each name once. */
const missingOf = (bowls: readonly BowlReckoned[], loose: readonly ProductUse[]): string[] => {
  const inBowls = bowls.flatMap(({ cost, name, held }) => {
    if (cost !== undefined) return [];
    const labels = held.filter((portion) => portion.cost === undefined).map(({ label }) => label);
    return labels.length > 0 ? labels : [`bowl ${name}`];
  });
  const beside = loose.flatMap(({ product, cost }) => (cost === undefined ? [product] : []));
  return [...new Set([...inBowls, ...beside])];
};

/**
 * The money of a visit, in minor units. `charge discount 20%` takes its share of what stands above it; `charged` is the
 * items less the discounts; `due` is that, and a deposit taken, less a deposit used. `loose` is what was used outside any
 * bowl.
 */
export const reckonMoney = (
  visit: Stood<Visit>,
  bowls: readonly BowlReckoned[],
  { currency }: SalonSettings,
  loose: readonly ProductUse[] = [],
): MoneyReckoned => {
  const items: { item: string; amount: number; place: MoneyReckoned['items'][number]['place'] }[] = [];
  const total = { charged: 0, discount: 0, paid: 0, taken: 0, used: 0, returned: 0 };
  let claim: MoneyReckoned['claim'];
  for (const fact of visit.entry.facts) {
    if (fact.word === 'charge') {
      const amount = minorUnits(fact.amount ?? 0, currency);
      const place = placeOf(visit, fact);
      if (isDiscount(fact)) {
        const off = fact.discount === undefined ? amount : shareOf(fact.discount, total.charged);
        total.discount += off;
        total.charged -= off;
      } else if (fact.total) claim = { amount, place };
      else {
        items.push({ item: fact.item, amount, place });
        total.charged += amount;
      }
    } else if (fact.word === 'paid') total.paid += minorUnits(fact.amount ?? 0, currency);
    else if (fact.word === 'deposit') {
      const kind = fact.used ? 'used' : fact.returned ? 'returned' : 'taken';
      total[kind] += minorUnits(fact.amount ?? 0, currency);
    }
  }
  const cost = costOf(bowls, loose);
  return {
    currency,
    items,
    charged: total.charged,
    discount: total.discount,
    claim,
    paid: total.paid,
    depositTaken: total.taken,
    depositUsed: total.used,
    depositReturned: total.returned,
    due: total.charged + total.taken - total.used - total.returned,
    cost: cost && toNumber(roundTo(cost, ONE)),
    costMissing: cost === undefined ? missingOf(bowls, loose) : [],
  };
};
