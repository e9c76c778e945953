import type { Journal } from '../journal/journal.ts';
import type { Stood } from '../journal/source.ts';
import { placeOf } from '../reckon/cite.ts';
import type { Stock, Visit } from '../records/schema/entry.ts';
import type { In, Out } from '../records/schema/shelf.ts';
import type { Component } from '../records/schema/values.ts';
import { isDate, isMonth, monthEnd } from '../text/dates.ts';
import { fold } from '../text/fold.ts';
import { recently } from '../text/recently.ts';
import type { Place } from '../text/span.ts';

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

type LotPart = { readonly part: Component; readonly lot: string; readonly place: Place };

const NO_PARTS: readonly LotPart[] = [];

const lotParts = recently((visit: Stood<Visit>): readonly LotPart[] => {
  const all: LotPart[] = [];
  for (const fact of visit.entry.facts) {
    if (fact.word !== 'bowl' && fact.word !== 'plus' && fact.word !== 'home') continue;
    for (const part of fact.parts) {
      if (part.lot === undefined) continue;
      all.push({ part, lot: fold(part.lot.text), place: placeOf(visit, fact, part.lot.at) });
    }
  }
  return all.length === 0 ? NO_PARTS : all;
});

const NO_USES: readonly LotUse[] = [];

/** The lots that a visit's own lines name, in order; those of a bowl made again stand in the earlier visit. */
export const lotUses = (visit: Stood<Visit>, { shelf }: Journal): readonly LotUse[] => {
  const parts = lotParts(visit);
  if (parts.length === 0) return NO_USES;
  return parts
    .map(({ part, lot, place }) => ({ product: productOf(part, shelf), lot, place }))
    .filter((use): use is LotUse => use.product !== undefined);
};

/** Whether a stock line is about the lot that a visit uses. */
export const isLot = ({ product, lot }: LotUse, move: Pick<LotUse, 'product' | 'lot'>): boolean =>
  move.product === product && move.lot === lot;

/** The last day of a day, a month or a year as typed. */
export const lastDayOf = (when: string): string =>
  isDate(when) ? when : isMonth(when) ? monthEnd(when) : `${when}-12-31`;
