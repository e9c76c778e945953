import { compareText } from '../../text/fold.ts';
import type { MoneyReckoned, VisitReckoned } from '../model.ts';
import { isWithin, type Period } from '../use/period.ts';
import { chargedItems, knownCost } from './charges.ts';
import { shareOf } from './money.ts';

/**
 * What a time took in and what its products cost, in whole minor units: parts always add up to the visits’ own figures.
 *
 * Reads: reckoned visits. Gives: rows for pages and files. Runs again: when one of the visits changes.
 */

/** What takings can be grouped by. `service` is an item charged for; a visit in two hands counts for each stylist. */
export const TAKINGS_BY = ['visit', 'client', 'service', 'stylist', 'month'] as const;
export type TakingsBy = (typeof TAKINGS_BY)[number];

/** Money of some visits in one currency. */
export type Takings = {
  readonly currency: string | undefined;
  /** Visits, or for a service how often it was charged for. */
  readonly visits: number;
  /** Items less discounts. */
  readonly charged: number;
  readonly discount: number;
  /** Received: payments, with deposits taken less those given back. */
  readonly paid: number;
  /** Products, what was left over too; what has no price counts as nothing. */
  readonly cost: number;
  /** Visits with a product that has no price. */
  readonly costUnknown: number;
};

/**
 * Takings of one client, service, stylist or month `YYYY-MM`, or of one visit (its day and client). The name is empty
 * where no visit names a stylist, and for visits that charged for nothing; `UNNAMED` for what was charged by no name.
 */
export type NamedTakings = Takings & { readonly name: string };

/** What is left of the charge after the products, in minor units. */
export const marginOf = ({ charged, cost }: Pick<Takings, 'charged' | 'cost'>): number => charged - cost;

/**
 * What was received at a visit, in minor units. A deposit taken is money received whether a `paid` line stands beside it or
 * not: `paid` is either all that is due, the deposit in it, or the price alone, the deposit beside it. Where it is neither,
 * as much of the deposit is in it as goes over the price.
 */
export const receivedAt = ({
  paid,
  charged,
  due,
  depositTaken,
  depositReturned,
}: Pick<MoneyReckoned, 'paid' | 'charged' | 'due' | 'depositTaken' | 'depositReturned'>): number => {
  if (paid === 0) return depositTaken - depositReturned;
  if (paid === due || paid === charged) return due;
  return paid > due ? paid : Math.min(due, paid + depositTaken);
};

const ofVisit = (visit: VisitReckoned): Takings => ({
  currency: visit.money.currency,
  visits: 1,
  charged: visit.money.charged,
  discount: visit.money.discount,
  paid: receivedAt(visit.money),
  cost: knownCost(visit),
  costUnknown: visit.money.cost === undefined ? 1 : 0,
});

/** The stylists of a visit with their part of it, to the penny: by its `split` line, else the one it is by. */
const byStylist = (visit: VisitReckoned): NamedTakings[] => {
  const own = ofVisit(visit);
  const { entry } = visit.visit;
  const split = entry.facts.findLast((fact) => fact.word === 'split');
  const shares = split?.word === 'split' ? split.shares.filter(({ percent }) => percent > 0) : [];
  if (shares.length === 0) return [{ ...own, name: entry.by?.name ?? '' }];
  let from = 0;
  return shares.map(({ by, percent }) => {
    const to = from + percent;
    // What is rounded is the whole up to here, so that the parts add up.
    const [less, more] = [from, to];
    const part = (amount: number): number => shareOf(more, amount) - shareOf(less, amount);
    from = to;
    return {
      ...own,
      name: by.name,
      charged: part(own.charged),
      discount: part(own.discount),
      paid: part(own.paid),
      cost: part(own.cost),
    };
  });
};

/** The items of a visit; what was paid is not paid item by item. */
const byService = (visit: VisitReckoned): NamedTakings[] => {
  const { currency, costUnknown } = ofVisit(visit);
  return chargedItems(visit).map(({ item, ...parts }) => ({
    ...parts,
    name: item,
    currency,
    visits: 1,
    paid: 0,
    costUnknown,
  }));
};

/** The name of one visit in a table or file: `2026-09-04 wren-abbott`. */
const visitName = ({ date, client }: VisitReckoned): string => `${date} ${client.name}`;

const partsOf = (visit: VisitReckoned, by: TakingsBy): NamedTakings[] => {
  switch (by) {
    case 'visit':
      return [{ ...ofVisit(visit), name: visitName(visit) }];
    case 'client':
      return [{ ...ofVisit(visit), name: visit.client.name }];
    case 'month':
      return [{ ...ofVisit(visit), name: visit.date.slice(0, 7) }];
    case 'stylist':
      return byStylist(visit);
    case 'service':
      return byService(visit);
  }
};

const keyOf = ({ name, currency }: NamedTakings): string => `${name}\n${currency ?? ''}`;

const total = (rows: Iterable<NamedTakings>): NamedTakings[] => {
  const totals = new Map<string, NamedTakings>();
  for (const row of rows) {
    const key = keyOf(row);
    const before = totals.get(key);
    totals.set(
      key,
      before === undefined
        ? row
        : {
            ...before,
            visits: before.visits + row.visits,
            charged: before.charged + row.charged,
            discount: before.discount + row.discount,
            paid: before.paid + row.paid,
            cost: before.cost + row.cost,
            costUnknown: before.costUnknown + row.costUnknown,
          },
    );
  }
  return [...totals.values()].sort((a, b) => compareText(keyOf(a), keyOf(b)));
};

const within = (reckoned: Iterable<VisitReckoned>, period: Period): VisitReckoned[] =>
  [...reckoned].filter(({ date }) => isWithin(date, period));

/** Takings of a period, a row for each currency. */
export const takings = (reckoned: Iterable<VisitReckoned>, period: Period): Takings[] =>
  total(within(reckoned, period).map((visit) => ({ ...ofVisit(visit), name: '' }))).map(({ name: _, ...row }) => row);

/** Takings of a period by what is asked for, by name. */
export const takingsBy = (reckoned: Iterable<VisitReckoned>, period: Period, by: TakingsBy): NamedTakings[] =>
  total(within(reckoned, period).flatMap((visit) => partsOf(visit, by)));
