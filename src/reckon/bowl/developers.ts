import { developersOf, type Outline, type Shelf, type ShelfItem } from '../../journal/shelf.ts';
import type { Strength } from '../../records/schema/values.ts';
import { compare, type Exact, exactOf } from '../../text/exact.ts';
import { percentOf } from '../../trade/strength.ts';

/** Per cent of a strength as typed: volumes by the trade's nominal pairing. */
export const percentTyped = ({ value, unit }: Pick<Strength, 'value' | 'unit'>): Exact =>
  unit === 'vol' ? percentOf(exactOf(value)) : exactOf(value);

const percents = new WeakMap<Strength, Exact>();

/** A developer's own per cent; undefined for one that comes in several strengths. */
export const percentOfItem = ({ strength }: ShelfItem): Exact | undefined => {
  if (strength === undefined) return undefined;
  const known = percents.get(strength);
  if (known !== undefined) return known;
  const percent = percentTyped(strength);
  percents.set(strength, percent);
  return percent;
};

type Developers = {
  /** Those that have a strength of their own, weakest first. */
  readonly strong: readonly { readonly item: Outline; readonly percent: Exact }[];
  readonly byPercent: ReadonlyMap<string, readonly Outline[]>;
  /** Those that come in several strengths, so that the note says which. */
  readonly open: readonly Outline[];
};

const known = new WeakMap<readonly Outline[], Developers>();

const key = ({ n, d }: Exact): string => `${n}/${d}`;

const readDevelopers = (all: readonly Outline[]): Developers => {
  const strong = all
    .flatMap((item) => (item.strength === undefined ? [] : [{ item, percent: percentTyped(item.strength) }]))
    .sort((a, b) => compare(a.percent, b.percent));
  const byPercent = new Map<string, Outline[]>();
  for (const { item, percent } of strong) {
    const same = byPercent.get(key(percent));
    if (same === undefined) byPercent.set(key(percent), [item]);
    else same.push(item);
  }
  return { strong, byPercent, open: all.filter(({ strength }) => strength === undefined) };
};

/** The developers on a shelf. A shelf is read once. */
const developersOn = (shelf: Shelf): Developers => {
  const all = developersOf(shelf);
  const found = known.get(all);
  if (found !== undefined) return found;
  const read = readDevelopers(all);
  known.set(all, read);
  return read;
};

/** Which developer a bare strength means: exactly one, none of those there are, or several to choose from. */
export type Meant =
  | { readonly kind: 'one'; readonly item: Outline }
  | { readonly kind: 'none'; readonly there: Developers['strong'] }
  | { readonly kind: 'several'; readonly items: readonly Outline[] };

const choose = (items: readonly Outline[]): Meant | undefined => {
  const [first] = items;
  if (first === undefined) return undefined;
  return items.length === 1 ? { kind: 'one', item: first } : { kind: 'several', items };
};

/**
 * The developer that a bare strength (per cent) means in a bowl of these bases: among those the bases' `uses` lines
 * name, the one of that strength or one that has no strength of its own; else the shelf's only one of that strength.
 */
export const developerOf = (percent: Exact, bases: readonly ShelfItem[], shelf: Shelf): Meant => {
  const { strong, byPercent, open } = developersOn(shelf);
  const same = byPercent.get(key(percent)) ?? [];
  const isUsed = ({ name }: Outline): boolean => bases.some(({ uses }) => uses.includes(name));
  return (
    choose(same.filter(isUsed)) ??
    choose(open.filter(isUsed)) ??
    choose(same) ??
    choose(open) ?? { kind: 'none', there: strong }
  );
};
