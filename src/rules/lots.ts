import type { Journal } from '../journal/journal.ts';
import type { Stood } from '../journal/source.ts';
import type { Stock, Visit } from '../records/schema/entry.ts';
import type { In, Out } from '../records/schema/shelf.ts';
import type { Component } from '../records/schema/values.ts';
import { isDate, isMonth, monthEnd } from '../text/dates.ts';
import { fold } from '../text/fold.ts';
import type { Place } from '../text/span.ts';
import { placeOf } from './cite.ts';

/** A lot as a visit names it. */
export type LotUse = { readonly product: string; readonly lot: string; readonly place: Place };

/** A stock line that names a lot, with the day of its entry (ISO date). */
export type LotMove<F extends In | Out> = {
  readonly stood: Stood<Stock>;
  readonly fact: F;
  readonly date: string;
  readonly product: string;
  readonly lot: string;
  /** The lot as typed. */
  readonly typed: string;
};

/** Every lot that came in and every one that went out, in order of their entries. */
export type Lots = { readonly ins: readonly LotMove<In>[]; readonly outs: readonly LotMove<Out>[] };

// Stock lines are the same array until one of them changes, and every visit asks.
const known = new WeakMap<Journal['stocks'], Lots>();

/** The lots of a journal's stock lines. */
export const lotsOf = ({ stocks }: Journal): Lots => {
  const found = known.get(stocks);
  if (found !== undefined) return found;
  const ins: LotMove<In>[] = [];
  const outs: LotMove<Out>[] = [];
  for (const stood of stocks) {
    const date = stood.entry.date?.date;
    // Without a day nothing can be said of before and after.
    if (date === undefined) continue;
    for (const fact of stood.entry.facts) {
      if ((fact.word !== 'in' && fact.word !== 'out') || fact.lot === undefined) continue;
      const { text } = fact.lot;
      const move = { stood, date, product: fact.product.name, lot: fold(text), typed: text };
      if (fact.word === 'in') ins.push({ ...move, fact });
      else outs.push({ ...move, fact });
    }
  }
  const lots: Lots = { ins, outs };
  known.set(stocks, lots);
  return lots;
};

/** After a measure the product is the second name: `1 scoop clay`. */
const productOf = ({ product, second }: Component, shelf: Journal['shelf']): string | undefined =>
  product !== undefined && second !== undefined && !shelf.has(product.name) && shelf.has(second.name)
    ? second.name
    : product?.name;

/** The lots that a visit's own lines name, in order; those of a bowl made again stand in the earlier visit. */
export const lotUses = (visit: Stood<Visit>, { shelf }: Journal): LotUse[] => {
  const uses: LotUse[] = [];
  for (const fact of visit.entry.facts) {
    if (fact.word !== 'bowl' && fact.word !== 'plus' && fact.word !== 'home') continue;
    for (const part of fact.parts) {
      const product = productOf(part, shelf);
      if (part.lot === undefined || product === undefined) continue;
      uses.push({ product, lot: fold(part.lot.text), place: placeOf(visit, fact, part.lot.at) });
    }
  }
  return uses;
};

/** Whether a stock line is about the lot that a visit uses. */
export const isLot = ({ product, lot }: LotUse, move: Pick<LotUse, 'product' | 'lot'>): boolean =>
  move.product === product && move.lot === lot;

/** The last day of a day, a month or a year as typed. */
export const lastDayOf = (when: string): string =>
  isDate(when) ? when : isMonth(when) ? monthEnd(when) : `${when}-12-31`;
