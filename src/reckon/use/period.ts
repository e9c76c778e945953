import type { ShelfItem } from '../../journal/shelf.ts';
import { add, div, type Exact, exactOf, isZero, mul, ZERO } from '../../text/exact.ts';
import { compareText } from '../../text/fold.ts';
import { packGrams, packOn } from '../bowl/price.ts';
import { usesOf } from '../bowl/uses.ts';
import type { ProductUse, VisitReckoned } from '../model.ts';

/**
 * What a time used up: products by weight, price and fate.
 *
 * Reads: reckoned visits and the shelf. Gives: rows for pages and files. Runs again: when one of the visits changes.
 */

/** Days from and to, both counted; undefined is open. */
export type Period = { readonly from?: string; readonly to?: string };

/** Grams left, by what became of them; `unsaid` where the note does not tell. */
export type LeftByFate = {
  readonly binned: Exact;
  readonly kept: Exact;
  readonly given: Exact;
  readonly unsaid: Exact;
};

/** One product, or one shade of a range, over a time. Weights are exact grams (pieces for goods sold so). */
export type UsageRow = {
  readonly product: string;
  readonly shade: string | undefined;
  readonly pieces: boolean;
  readonly visits: number;
  readonly mixed: Exact;
  readonly used: Exact;
  readonly left: Exact;
  readonly fate: LeftByFate;
  /** Packs that the mixed weight comes to, exact; undefined when a pack’s weight is not known. */
  readonly packs: Exact | undefined;
  /** Exact minor units of what has a price and a weight; undefined when none of it has both. */
  readonly cost: Exact | undefined;
  readonly costOfLeft: Exact | undefined;
  /** Whether some of it is not in the cost. */
  readonly costMissing: boolean;
};

/** Whether a day is within a period. */
export const isWithin = (date: string, { from, to }: Period): boolean =>
  (from === undefined || date >= from) && (to === undefined || date <= to);

const FATES = ['binned', 'kept', 'given', 'unsaid'] as const;
type Fate = (typeof FATES)[number];

const keyOf = ({ product, shade }: Pick<ProductUse, 'product' | 'shade'>): string => `${product}\n${shade ?? ''}`;

/** What a visit left of each product by one fate. */
const leftWith = ({ bowls }: VisitReckoned, fate: Fate): Map<string, Exact> => {
  const own = bowls.filter(({ left }) => left !== undefined && (left.fate ?? 'unsaid') === fate);
  if (own.length === 0) return new Map();
  const uses = usesOf(bowls.map((bowl) => (own.includes(bowl) ? bowl : { ...bowl, left: undefined })));
  return new Map(uses.map((use) => [keyOf(use), use.left]));
};

const packsOf = (use: ProductUse, { date, salon }: VisitReckoned, item: ShelfItem | undefined): Exact | undefined => {
  const pack = item && packOn(item, date);
  if (item === undefined || pack === undefined) return undefined;
  const inPack = use.pieces ? exactOf(pack.amount.value) : packGrams(item, pack, salon);
  return inPack === undefined || isZero(inPack) ? undefined : div(use.mixed, inPack);
};

const plus = (a: Exact | undefined, b: Exact | undefined): Exact | undefined => a && b && add(a, b);

/** The sum of what is known of two figures. */
export const sumKnown = (a: Exact | undefined, b: Exact | undefined): Exact | undefined =>
  a && b ? add(a, b) : (a ?? b);

const rowOf = (use: ProductUse, visit: VisitReckoned, fate: LeftByFate, item: ShelfItem | undefined): UsageRow => ({
  product: use.product,
  shade: use.shade,
  pieces: use.pieces === true,
  visits: 1,
  mixed: use.mixed,
  used: use.used,
  left: use.left,
  fate,
  packs: packsOf(use, visit, item),
  cost: use.cost,
  costMissing: use.costMissing === true,
  costOfLeft: isZero(use.mixed) ? use.cost && ZERO : use.cost && mul(use.cost, div(use.left, use.mixed)),
});

const join = (a: UsageRow, b: UsageRow): UsageRow => ({
  ...a,
  visits: a.visits + b.visits,
  mixed: add(a.mixed, b.mixed),
  used: add(a.used, b.used),
  left: add(a.left, b.left),
  fate: {
    binned: add(a.fate.binned, b.fate.binned),
    kept: add(a.fate.kept, b.fate.kept),
    given: add(a.fate.given, b.fate.given),
    unsaid: add(a.fate.unsaid, b.fate.unsaid),
  },
  packs: plus(a.packs, b.packs),
  cost: sumKnown(a.cost, b.cost),
  costOfLeft: sumKnown(a.costOfLeft, b.costOfLeft),
  costMissing: a.costMissing || b.costMissing,
});

type Ware = Pick<UsageRow, 'product' | 'shade'>;

const shadeOf = ({ shade }: Ware): string => shade ?? '';

const depthOf = (ware: Ware): number => Number.parseFloat(shadeOf(ware)) || 0;

/** Order of rows: by product, then by the shade's depth, then by the shade. */
export const compareRows = (a: Ware, b: Ware): number =>
  compareText(a.product, b.product) || depthOf(a) - depthOf(b) || compareText(shadeOf(a), shadeOf(b));

/** What one visit used, a row for each product and shade, as its notes have them. */
export const visitRows = (visit: VisitReckoned, shelf: ReadonlyMap<string, ShelfItem>): UsageRow[] => {
  const left = new Map(FATES.map((fate) => [fate, leftWith(visit, fate)]));
  return visit.uses.map((use) => {
    const of = (fate: Fate): Exact => left.get(fate)?.get(keyOf(use)) ?? ZERO;
    const fates = { binned: of('binned'), kept: of('kept'), given: of('given'), unsaid: of('unsaid') };
    return rowOf(use, visit, fates, shelf.get(use.product));
  });
};

/** What the visits of a period used, a row for each product and shade, by product and then shade. */
export const usage = (
  reckoned: Iterable<VisitReckoned>,
  period: Period,
  shelf: ReadonlyMap<string, ShelfItem>,
): UsageRow[] => {
  const rows = new Map<string, UsageRow>();
  for (const visit of reckoned) {
    if (!isWithin(visit.date, period)) continue;
    for (const row of visitRows(visit, shelf)) {
      const before = rows.get(keyOf(row));
      rows.set(keyOf(row), before === undefined ? row : join(before, row));
    }
  }
  return [...rows.values()].sort(compareRows);
};
