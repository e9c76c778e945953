import type { ShelfItem } from '../../journal/shelf.ts';
import { add, type Exact, ZERO } from '../../text/exact.ts';
import { compareText } from '../../text/fold.ts';
import type { VisitReckoned } from '../model.ts';
import { compareRows, isWithin, type LeftByFate, type Period, sumKnown, type UsageRow, visitRows } from './period.ts';

/**
 * What a time used up, grouped.
 *
 * Reads: reckoned visits and the shelf. Gives: groups for pages and files. Runs again: when one of the visits changes.
 */

/** What use can be grouped by. A visit counts for the stylist in its header. */
export const USAGE_BY = ['product', 'shade', 'kind', 'stylist', 'client', 'month'] as const;
export type UsageBy = (typeof USAGE_BY)[number];

/** What some visits used together. Weights are exact grams; goods sold by the piece are counted apart. */
export type UsageGroup = {
  /** A product, a product and shade, a kind, a stylist, a client or a month `YYYY-MM`; empty where the notes say none. */
  readonly name: string;
  /** The product and shade, where all of the group is one. */
  readonly product: string | undefined;
  readonly shade: string | undefined;
  /** Visits that used any of it. */
  readonly visits: number;
  /** Whether anything in it is weighed. */
  readonly weighed: boolean;
  readonly mixed: Exact;
  readonly used: Exact;
  readonly left: Exact;
  readonly fate: LeftByFate;
  readonly pieces: Exact;
  /** Exact; undefined where products differ, or a pack’s weight is not known. */
  readonly packs: Exact | undefined;
  /** Exact minor units of what has a price; undefined when nothing has one. */
  readonly cost: Exact | undefined;
  readonly costOfLeft: Exact | undefined;
  /** Products in it of which some has no price, or no weight. */
  readonly unpriced: readonly string[];
};

/** The name of a row with its shade: `cream 7/43`. */
export const wareOf = ({ product, shade }: Pick<UsageRow, 'product' | 'shade'>): string =>
  shade === undefined ? product : `${product} ${shade}`;

const nameOf = (
  by: UsageBy,
  row: UsageRow,
  { visit, client, date }: VisitReckoned,
  shelf: ReadonlyMap<string, ShelfItem>,
): string => {
  switch (by) {
    case 'product':
      return row.product;
    case 'shade':
      return wareOf(row);
    case 'kind':
      return shelf.get(row.product)?.kind ?? '';
    case 'stylist':
      return visit.entry.by?.name ?? '';
    case 'client':
      return client.name;
    case 'month':
      return date.slice(0, 7);
  }
};

const groupOf = (name: string, by: UsageBy | undefined, row: UsageRow): UsageGroup => ({
  name,
  product: by === 'product' || by === 'shade' ? row.product : undefined,
  shade: by === 'shade' ? row.shade : undefined,
  visits: 1,
  weighed: !row.pieces,
  mixed: row.pieces ? ZERO : row.mixed,
  used: row.pieces ? ZERO : row.used,
  left: row.pieces ? ZERO : row.left,
  fate: row.fate,
  pieces: row.pieces ? row.mixed : ZERO,
  packs: by === 'product' || by === 'shade' ? row.packs : undefined,
  cost: row.cost,
  costOfLeft: row.costOfLeft,
  unpriced: row.costMissing ? [row.product] : [],
});

const joined = (a: UsageGroup, b: UsageGroup, visits: number): UsageGroup => ({
  ...a,
  visits,
  weighed: a.weighed || b.weighed,
  mixed: add(a.mixed, b.mixed),
  used: add(a.used, b.used),
  left: add(a.left, b.left),
  fate: {
    binned: add(a.fate.binned, b.fate.binned),
    kept: add(a.fate.kept, b.fate.kept),
    given: add(a.fate.given, b.fate.given),
    unsaid: add(a.fate.unsaid, b.fate.unsaid),
  },
  pieces: add(a.pieces, b.pieces),
  packs: a.packs && b.packs && add(a.packs, b.packs),
  cost: sumKnown(a.cost, b.cost),
  costOfLeft: sumKnown(a.costOfLeft, b.costOfLeft),
  unpriced: b.unpriced.every((one) => a.unpriced.includes(one)) ? a.unpriced : [...a.unpriced, ...b.unpriced],
});

const order = (a: UsageGroup, b: UsageGroup): number =>
  a.product !== undefined && b.product !== undefined
    ? compareRows({ product: a.product, shade: a.shade }, { product: b.product, shade: b.shade })
    : compareText(a.name, b.name);

const grouped = (
  reckoned: Iterable<VisitReckoned>,
  period: Period,
  shelf: ReadonlyMap<string, ShelfItem>,
  by: UsageBy | undefined,
): UsageGroup[] => {
  const groups = new Map<string, { group: UsageGroup; last: VisitReckoned }>();
  for (const visit of reckoned) {
    if (!isWithin(visit.date, period)) continue;
    for (const row of visitRows(visit, shelf)) {
      const name = by === undefined ? '' : nameOf(by, row, visit, shelf);
      const before = groups.get(name);
      const own = groupOf(name, by, row);
      const group =
        before === undefined ? own : joined(before.group, own, before.group.visits + (before.last === visit ? 0 : 1));
      groups.set(name, { group, last: visit });
    }
  }
  return [...groups.values()].map(({ group }) => group).sort(order);
};

/** What the visits of a period used, a row for each group: products and shades in order, the rest by name or date. */
export const usageBy = (
  reckoned: Iterable<VisitReckoned>,
  period: Period,
  shelf: ReadonlyMap<string, ShelfItem>,
  by: UsageBy,
): UsageGroup[] => grouped(reckoned, period, shelf, by);

/** Groups of which no two hold the same product and shade, together; a visit counts once in each. */
export const groupsTogether = ([first, ...rest]: readonly UsageGroup[]): UsageGroup | undefined =>
  first &&
  rest.reduce((whole, group) => joined(whole, group, whole.visits + group.visits), { ...first, packs: undefined });

/** All that the visits of a period used; undefined when they used nothing. */
export const usageInAll = (
  reckoned: Iterable<VisitReckoned>,
  period: Period,
  shelf: ReadonlyMap<string, ShelfItem>,
): UsageGroup | undefined => grouped(reckoned, period, shelf, undefined)[0];
