import type { Journal } from '../../journal/journal.ts';
import type { SalonSettings } from '../../journal/salon.ts';
import type { ShelfItem } from '../../journal/shelf.ts';
import type { Stood } from '../../journal/source.ts';
import type { Stock, StockFact } from '../../records/schema/entry.ts';
import type { Amount } from '../../records/schema/values.ts';
import { isDate, isMonth, monthEnd } from '../../text/dates.ts';
import { div, type Exact, exact, exactOf, max, mul } from '../../text/exact.ts';
import type { Place } from '../../text/span.ts';
import { gramPrice, packGrams, packOn, piecePrice } from '../bowl/price.ts';
import { weigh } from '../bowl/weighing.ts';
import { placeOf } from '../cite.ts';
import { minuteOf } from '../clock/settle.ts';
import { currencyDecimals } from '../currency.ts';

/** A line of a stock entry in grams, or in pieces for goods sold by the piece. */
export type StockMove = {
  readonly kind: 'in' | 'count' | 'out';
  readonly date: string;
  /** Minute of the day; undefined where the header has no time. */
  readonly minute: number | undefined;
  readonly salon: SalonSettings;
  readonly item: ShelfItem;
  readonly shade: string | undefined;
  readonly amount: Exact;
  readonly pieces: boolean;
  readonly lot: string | undefined;
  /** The last day it may be used. */
  readonly useBy: string | undefined;
  /** Exact minor units a gram or piece: what was paid, else the shelf’s price of the day. */
  readonly price: Exact | undefined;
  /** Grams or pieces in a pack. */
  readonly pack: Exact | undefined;
  /** How far off the figure may be by the way it was written: half a pack, half of the scales’ step. */
  readonly within: Exact;
  readonly entry: Stood<Stock>;
  readonly place: Place;
};

/** A stock line that moves nothing, and why. */
export type Unmoved = {
  readonly place: Place;
  readonly name: string;
  readonly why: 'not-on-shelf' | 'no-shade' | 'no-weight' | 'no-amount';
};

const HALF = exact(1, 2);

/** The smallest step that a figure written so can show, in its own unit. A choice, no source. */
const stepOf = (value: number, unit: string): Exact => {
  if (unit === 'pack') {
    for (const parts of [1, 2, 3, 4, 8]) if (Number.isInteger(value * parts)) return exact(1, parts);
    return exact(1, 10);
  }
  const [, decimals = ''] = String(value).split('.');
  return exact(1, 10 ** Math.min(decimals.length, 6));
};

const lastDay = (when: string): string => (isDate(when) ? when : isMonth(when) ? monthEnd(when) : `${when}-12-31`);

type Weighed = { readonly amount: Exact; readonly unit: Exact; readonly pieces: boolean };

/** An amount of stock as grams or pieces, and what one of its unit comes to. */
export const stockWeight = (
  item: ShelfItem,
  amount: Amount,
  date: string,
  salon: SalonSettings,
): Weighed | undefined => {
  const pack = packOn(item, date);
  const value = exactOf(amount.value);
  if (pack?.amount.unit === 'each') {
    const unit = amount.unit === 'pack' ? exactOf(pack.amount.value) : exact(1);
    const isPieces = ['pack', 'each', ''].includes(amount.unit);
    return isPieces ? { amount: mul(value, unit), unit, pieces: true } : undefined;
  }
  const inPack = pack && packGrams(item, pack, salon);
  const one = weigh({ value: 1, unit: amount.unit, at: amount.at }, item, item.name, salon, inPack);
  return one.kind === 'grams' ? { amount: mul(value, one.grams), unit: one.grams, pieces: false } : undefined;
};

/** Grams or pieces in a pack on a day. */
export const inPackOn = (item: ShelfItem, date: string, salon: SalonSettings): Exact | undefined => {
  const pack = packOn(item, date);
  if (pack === undefined || pack.amount.value === 0) return undefined;
  return pack.amount.unit === 'each' ? exactOf(pack.amount.value) : packGrams(item, pack, salon);
};

/** Exact minor units a gram or piece on a day, by the shelf. */
export const priceOn = (item: ShelfItem, date: string, salon: SalonSettings): Exact | undefined =>
  piecePrice(item, date, salon.currency) ?? gramPrice(item, date, salon);

type Line = Extract<StockFact, { word: 'in' | 'count' | 'out' }>;

const moveOf = (journal: Journal, stood: Stood<Stock>, fact: Line, date: string): StockMove | Unmoved => {
  const { entry } = stood;
  const salon = journal.salons.get(entry.salon?.name ?? '') ?? journal.salon;
  const place = placeOf(stood, fact, fact.product.at);
  const item = journal.shelf.get(fact.product.name);
  const shade = fact.shade?.shade;
  const name = shade === undefined ? fact.product.name : `${fact.product.name} ${shade}`;
  if (item === undefined) return { place, name, why: 'not-on-shelf' };
  if (item.ranged && shade === undefined) return { place, name, why: 'no-shade' };
  if (fact.amount === undefined) return { place, name, why: 'no-amount' };
  // A word beside the figure that was not read may be its unit.
  const isOpen = fact.rest !== undefined && fact.amount.unit === '';
  const weighed = isOpen ? undefined : stockWeight(item, fact.amount, date, salon);
  if (weighed === undefined) return { place, name, why: 'no-weight' };
  const pack = inPackOn(item, date, salon);
  const paid = fact.word === 'in' ? fact.price : undefined;
  const minor = paid === undefined ? undefined : mul(exactOf(paid), exact(10 ** currencyDecimals(salon.currency)));
  const written = mul(stepOf(fact.amount.value, fact.amount.unit), weighed.unit);
  return {
    kind: fact.word,
    date,
    minute: entry.time && minuteOf(entry.time, salon.hours),
    salon,
    item,
    shade,
    amount: weighed.amount,
    pieces: weighed.pieces,
    lot: fact.lot?.text,
    useBy: fact.word === 'in' && fact.useBy !== undefined ? lastDay(fact.useBy.when) : undefined,
    price: minor !== undefined && pack !== undefined ? div(minor, pack) : priceOn(item, date, salon),
    pack,
    within: mul(HALF, weighed.pieces ? written : max(written, salon.scale)),
    entry: stood,
    place,
  };
};

/** The stock lines of a journal, in order of their entries, and those that move nothing. */
export const stockMoves = (journal: Journal): { readonly moves: StockMove[]; readonly unmoved: Unmoved[] } => {
  const moves: StockMove[] = [];
  const unmoved: Unmoved[] = [];
  for (const stood of journal.stocks) {
    const date = stood.entry.date?.date;
    if (date === undefined) continue;
    for (const fact of stood.entry.facts) {
      if (fact.word !== 'in' && fact.word !== 'count' && fact.word !== 'out') continue;
      const move = moveOf(journal, stood, fact, date);
      if ('why' in move) unmoved.push(move);
      else moves.push(move);
    }
  }
  return { moves, unmoved };
};
