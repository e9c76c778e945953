import type { ShelfItem } from '../../journal/shelf.ts';
import type { Strength } from '../../records/schema/values.ts';
import { add, compare, div, type Exact, exact, exactOf, isZero, mul, sub, ZERO } from '../../text/exact.ts';
import { recently } from '../../text/recently.ts';
import type { Place } from '../../text/span.ts';
import { percentOf } from '../../trade/strength.ts';
import type { BowlReckoned, Portion } from '../model.ts';

/** Every portion that went into a bowl, as weighed where the scales said so, what came out of another bowl included. */
export const portionsIn = ({ held, poured }: BowlReckoned): readonly Portion[] => poured ?? held;

type Contents = { readonly items: readonly ShelfItem[]; readonly bases: readonly ShelfItem[] };

const contentsOf = recently((bowl: BowlReckoned): Contents => {
  const items: ShelfItem[] = [];
  const bases: ShelfItem[] = [];
  for (const { item, role } of portionsIn(bowl)) {
    if (item === undefined) continue;
    if (!items.includes(item)) items.push(item);
    if (role === 'base' && !bases.includes(item)) bases.push(item);
  }
  return { items, bases };
});

/** The shelf items in a bowl, each once, in the order they were typed. */
export const itemsIn = (bowl: BowlReckoned): readonly ShelfItem[] => contentsOf(bowl).items;

/** The items in a bowl that the ratio calls colour: what stands against the developer. */
export const basesIn = (bowl: BowlReckoned): readonly ShelfItem[] => contentsOf(bowl).bases;

/** Where a portion stands in its bowl's own line; the whole bowl where it came out of another. */
export const placeInBowl = (bowl: BowlReckoned, is: (portion: Portion) => boolean): Place =>
  (bowl.held.find(is) ?? bowl).place;

/** Whether peroxide is in a bowl; a developer of 0 % is none. */
export const hasPeroxide = (bowl: BowlReckoned): boolean => portionsIn(bowl).some(isPeroxide);

const isPeroxide = ({ role, strength }: Portion): boolean =>
  role === 'developer' && (strength === undefined || !isZero(strength));

const isDeveloper = ({ role }: Portion): boolean => role === 'developer';

const strengthOf = (portions: readonly Portion[]): Exact | undefined => {
  const first = portions.findIndex(isDeveloper);
  const last = portions.findLastIndex(isDeveloper);
  if (first === last) return portions[first]?.strength;
  let [weight, peroxide]: [Exact, Exact] = [ZERO, ZERO];
  for (const portion of portions) {
    if (!isDeveloper(portion)) continue;
    if (portion.weight === undefined || portion.strength === undefined) return undefined;
    weight = add(weight, portion.weight);
    peroxide = add(peroxide, mul(portion.weight, portion.strength));
  }
  return isZero(weight) ? undefined : div(peroxide, weight);
};

/** What a hand that pours two developers may be out by, in per cent of peroxide: a choice, no source. */
const POURED = exact(1, 4);

/**
 * Strength of the developers in a bowl together, in per cent, as weighed; as meant where a blend was poured a gram or two
 * beside it. Undefined without a developer, or while a weight is missing.
 */
export const developerStrength = (bowl: BowlReckoned): Exact | undefined => {
  const weighed = strengthOf(portionsIn(bowl));
  if (bowl.held === bowl.portions || weighed === undefined) return weighed;
  const meant = strengthOf(bowl.portions);
  if (meant === undefined) return weighed;
  const apart = compare(weighed, meant) < 0 ? sub(meant, weighed) : sub(weighed, meant);
  return compare(apart, POURED) <= 0 ? meant : weighed;
};

/** A strength as typed, in per cent. */
export const inPercent = ({ value, unit }: Strength): Exact =>
  unit === 'vol' ? percentOf(exactOf(value)) : exactOf(value);
