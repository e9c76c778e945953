import type { VisitReckoned } from './model.ts';
import { shareOf } from './money.ts';
import { compareText, isWithin, type Period } from './period.ts';

/**
 * What a time took in and what its products cost, in minor units: by currency, client and stylist.
 *
 * Reads: reckoned visits. Gives: rows for pages and files. Runs again: when one of the visits changes.
 */

/** Money of some visits in one currency. */
export type Takings = {
  readonly currency: string | undefined;
  readonly visits: number;
  readonly charged: number;
  readonly discount: number;
  readonly paid: number;
  /** Products, of the visits whose every price is known. */
  readonly cost: number;
  /** Visits with a product that has no price. */
  readonly costUnknown: number;
};

/** Takings of one client or stylist; a stylist’s name is empty where no visit names one. */
export type NamedTakings = Takings & { readonly name: string };

const ofVisit = ({ money }: VisitReckoned): Takings => ({
  currency: money.currency,
  visits: 1,
  charged: money.charged,
  discount: money.discount,
  paid: money.paid,
  cost: money.cost ?? 0,
  costUnknown: money.cost === undefined ? 1 : 0,
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

/** Takings of a period by client, by name. */
export const clientTotals = (reckoned: Iterable<VisitReckoned>, period: Period = {}): NamedTakings[] =>
  total(within(reckoned, period).map((visit) => ({ ...ofVisit(visit), name: visit.client.name })));

/** Takings of a period by stylist, by name; a visit in two hands counts for each with its share. */
export const stylistTotals = (reckoned: Iterable<VisitReckoned>, period: Period = {}): NamedTakings[] =>
  total(within(reckoned, period).flatMap(byStylist));
