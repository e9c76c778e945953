import type { ShelfItem } from '../../journal/shelf.ts';
import type { Pack } from '../../records/schema/shelf.ts';
import { add, div, type Exact, exact, exactOf, isZero, mul, ZERO } from '../../text/exact.ts';
import { isUnit } from '../../trade/units.ts';
import { currencyDecimals } from '../currency.ts';
import type { Portion } from '../model.ts';
import { inMillionths } from './finest.ts';
import { type Conversion, gramsOfUnit } from './weighing.ts';

/** The pack whose price is in force on the day: the latest `from` up to it; a pack without one counts from ever. */
export const packOn = (item: ShelfItem, date: string): Pack | undefined => {
  let best: Pack | undefined;
  for (const pack of item.packs) {
    const from = pack.from?.date ?? '';
    if (from <= date && from >= (best?.from?.date ?? '')) best = pack;
  }
  return best;
};

/** Grams in a pack; undefined for a pack of pieces, and for a volume that has no density. */
export const packGrams = (item: ShelfItem, pack: Pack, conversion: Conversion): Exact | undefined =>
  isUnit(pack.amount.unit) || pack.amount.unit === ''
    ? gramsOfUnit(exactOf(pack.amount.value), pack.amount.unit, item, conversion)
    : undefined;

const minor = (price: number, currency: string | undefined): Exact =>
  mul(exactOf(price), exact(10 ** currencyDecimals(currency)));

/** What prices are taken in: the salon's currency and its conversions. */
export type Pricing = Conversion & { readonly currency: string | undefined };

type Priced = { readonly mlAsGrams: boolean; readonly currency: string | undefined; readonly price: Exact | undefined };

/** Prices a gram already worked out, by pack: a shelf has few packs and a journal many bowls. */
const known = new WeakMap<Pack, Priced>();

const packPrice = (item: ShelfItem, pack: Pack, { mlAsGrams, currency }: Pricing): Exact | undefined => {
  if (pack.price === undefined) return undefined;
  const inPack = packGrams(item, pack, { mlAsGrams });
  return inPack === undefined || isZero(inPack) ? undefined : div(minor(pack.price, currency), inPack);
};

/** Exact minor units a gram on the day; undefined when no price, or no weight of the pack, is known. */
export const gramPrice = (item: ShelfItem, date: string, pricing: Pricing): Exact | undefined => {
  const pack = packOn(item, date);
  if (pack === undefined) return undefined;
  const found = known.get(pack);
  const { mlAsGrams, currency } = pricing;
  if (found !== undefined && found.mlAsGrams === mlAsGrams && found.currency === currency) return found.price;
  const price = packPrice(item, pack, pricing);
  known.set(pack, { mlAsGrams, currency, price });
  return price;
};

/** Exact minor units a piece, for goods sold by the piece (`pack 1 each 14.50`); undefined for anything weighed. */
export const piecePrice = (item: ShelfItem, date: string, currency: string | undefined): Exact | undefined => {
  const pack = packOn(item, date);
  if (pack?.price === undefined || pack.amount.unit !== 'each' || pack.amount.value === 0) return undefined;
  return div(minor(pack.price, currency), exactOf(pack.amount.value));
};

/** What was really weighed of a portion, else what was reckoned; exact grams. */
export const heldOf = ({ weighed, weight }: Portion): Exact | undefined => weighed ?? weight;

/**
 * Exact minor units of a portion at the price of the day; water is free; out of a bowl, that bowl's own price. Undefined
 * when the weight or the price is not known.
 */
export const portionCost = (portion: Portion, date: string, pricing: Pricing): Exact | undefined => {
  const held = heldOf(portion);
  if (held === undefined) return undefined;
  const { role, item, from } = portion;
  if (role === 'water') return ZERO;
  if (from !== undefined)
    return from.cost && from.mixed && !isZero(from.mixed)
      ? inMillionths(mul(div(from.cost, from.mixed), held))
      : undefined;
  const price = item && gramPrice(item, date, pricing);
  return price && mul(price, held);
};

/** Exact minor units of a bowl, everything once: what comes out of another bowl is paid for there. */
export const portionsCost = (portions: readonly Portion[]): Exact | undefined => {
  let total: Exact = ZERO;
  for (const { role, cost } of portions) {
    if (role === 'bowl') continue;
    if (cost === undefined) return undefined;
    total = add(total, cost);
  }
  return portions.length > 0 ? total : undefined;
};
