import type { UsageRow } from '../reckon/period.ts';
import { add, type Exact } from '../text/exact.ts';

/**
 * A line of the product report: one shade, a product with all its shades, or everything. What has no price counts as
 * nothing in a sum and is named apart.
 */
export type UsageLine = UsageRow & { readonly name: string };

const known = (a: Exact | undefined, b: Exact | undefined): Exact | undefined => (a && b ? add(a, b) : (a ?? b));

const joined = (a: UsageLine, b: UsageLine): UsageLine => ({
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
  packs: known(a.packs, b.packs),
  cost: known(a.cost, b.cost),
  costOfLeft: known(a.costOfLeft, b.costOfLeft),
});

/** Each product or shade by itself. */
export const linesOf = (rows: readonly UsageRow[]): UsageLine[] =>
  rows.map((row) => ({ ...row, name: row.shade === undefined ? row.product : `${row.product} ${row.shade}` }));

/** Each product with all its shades together, in the order of the rows. */
export const productLines = (rows: readonly UsageRow[]): UsageLine[] => {
  const found = new Map<string, UsageLine>();
  for (const line of linesOf(rows)) {
    const before = found.get(line.product);
    found.set(line.product, before === undefined ? { ...line, name: line.product } : joined(before, line));
  }
  return [...found.values()];
};

/** All lines together; packs of different products are not added up. */
export const totalLine = ([first, ...rest]: readonly UsageLine[]): UsageLine | undefined =>
  first && { ...rest.reduce(joined, first), name: 'In all', packs: undefined };
