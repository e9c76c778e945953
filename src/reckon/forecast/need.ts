import { toNumber } from '../../text/exact.ts';
import { placingsOf, zonesOfBowl } from '../head/services.ts';
import type { BowlReckoned, VisitReckoned } from '../model.ts';

/**
 * What each bowl of a client came to need: mixed, less left.
 *
 * Reads: reckoned visits. Gives: one need a bowl, with its further mixes. Runs again: when a visit changes.
 */

/** What one bowl held and needed, in grams. */
export type Need = {
  readonly client: string;
  readonly date: string;
  /** As typed but in capitals. */
  readonly bowl: string;
  /** The product that most of its base is: bowls are alike by it and by where they go. */
  readonly product: string;
  /** Where it went, in order; none: all over, or not said. */
  readonly zones: readonly string[];
  /** Whether all of it goes on new growth. */
  readonly roots: boolean;
  /** New growth on the day in mm, measured or reckoned; undefined where the notes tell neither. */
  readonly growth: number | undefined;
  /** Held, with its further mixes. */
  readonly mixed: number;
  /** Mixed, less left. Without a `left` line all of it counts as used. */
  readonly used: number;
  /** Minor units of the currency a gram, and the currency; undefined where something in it has no price. */
  readonly price: number | undefined;
  readonly currency: string | undefined;
  /** Whether a `left` line says so, or a further mix shows that it ran short. */
  readonly told: boolean;
};

/** The product that weighs most in the base; undefined for a bowl that is taken out of another, or holds none. */
const baseProduct = ({ portions }: BowlReckoned): string | undefined => {
  if (portions.some(({ role }) => role === 'bowl')) return undefined;
  const weights = new Map<string, number>();
  for (const { role, item, weight } of portions)
    if (role === 'base' && item && weight) weights.set(item.name, (weights.get(item.name) ?? 0) + toNumber(weight));
  return [...weights].reduce<[string, number] | undefined>(
    (most, one) => (most === undefined || one[1] > most[1] ? one : most),
    undefined,
  )?.[0];
};

const growthOf = ({ growth }: VisitReckoned): number | undefined => {
  const mm = growth.measured ?? growth.expected;
  return mm && toNumber(mm) > 0 ? toNumber(mm) : undefined;
};

/** The names of the further mixes of a bowl: `more A` makes A2, then A3. */
export const furtherOf = (
  { visit }: VisitReckoned,
  bowls: readonly BowlReckoned[],
  { name }: BowlReckoned,
): BowlReckoned[] => {
  const letter = name.replace(/\d+$/, '');
  const typed = new Set(
    visit.entry.facts.flatMap((fact) =>
      fact.word === 'bowl' || fact.word === 'again' ? [fact.bowl.name.toUpperCase()] : [],
    ),
  );
  return bowls.filter((one) => one.name !== name && !typed.has(one.name) && one.name.replace(/\d+$/, '') === letter);
};

const isRoots = (zone: string): boolean => zone.split(' ').some((word) => word === 'roots' || word === 'regrowth');

/** The bowls that a bowl is taken out into, and those taken out of them in turn. */
const takenInto = (visit: VisitReckoned, bowl: BowlReckoned): BowlReckoned[] =>
  visit.bowls
    .filter(({ portions }) => portions.some(({ from }) => from?.name === bowl.name))
    .flatMap((one) => [one, ...takenInto(visit, one)]);

const isPulledThrough = (visit: VisitReckoned, bowl: BowlReckoned): boolean =>
  placingsOf(visit.visit, bowl.name).some(({ technique }) => technique?.word === 'comb-through');

/**
 * Whether all of a bowl goes on new growth: it, its further mixes and what is taken out of it are noted on roots and on
 * nothing else. Only such a bowl grows with the new growth: lengths that it feeds besides are as long as ever.
 */
const isOnRootsAlone = (visit: VisitReckoned, group: readonly BowlReckoned[]): boolean => {
  const fed = group.flatMap((bowl) => [bowl, ...takenInto(visit, bowl)]);
  return fed.every((bowl, index) => {
    const zones = zonesOfBowl(visit, bowl.name);
    // A further mix goes where the bowl goes, unless it has a line of its own.
    const isFurther = index > 0 && zones.length === 0 && group.includes(bowl);
    return isFurther || (zones.length > 0 && zones.every(isRoots) && !isPulledThrough(visit, bowl));
  });
};

const needOf = (visit: VisitReckoned, bowl: BowlReckoned): Need | undefined => {
  const product = baseProduct(bowl);
  if (product === undefined || bowl.mixed === undefined) return undefined;
  const more = bowl.mixedWithMore === undefined ? [] : furtherOf(visit, visit.bowls, bowl);
  const group = [bowl, ...more];
  const mixed = toNumber(bowl.mixedWithMore ?? bowl.mixed);
  const left = group.reduce((sum, one) => sum + (one.left === undefined ? 0 : toNumber(one.left.weight)), 0);
  // More left than mixed is a slip of the note; a bowl all of which was left did not go on.
  if (mixed - left <= 0) return undefined;
  const zones = zonesOfBowl(visit, bowl.name).toSorted();
  return {
    client: visit.client.name,
    date: visit.date,
    bowl: bowl.name,
    product,
    zones,
    roots: isOnRootsAlone(visit, group),
    growth: growthOf(visit),
    mixed,
    used: mixed - left,
    price: bowl.cost && toNumber(bowl.cost) / toNumber(bowl.mixed),
    currency: visit.salon.currency,
    told: more.length > 0 || bowl.left !== undefined,
  };
};

/** What every bowl of a visit needed, leaving out those whose weight the notes do not tell. */
export const needsOf = (visit: VisitReckoned): Need[] => {
  const further = new Set(
    visit.bowls.flatMap((bowl) =>
      bowl.mixedWithMore === undefined ? [] : furtherOf(visit, visit.bowls, bowl).map(({ name }) => name),
    ),
  );
  return visit.bowls.flatMap((bowl) => (further.has(bowl.name) ? [] : (needOf(visit, bowl) ?? [])));
};

/** Where and of what a bowl is to be mixed, for which grams are asked. */
export type BowlAsk = Pick<Need, 'product' | 'zones' | 'roots' | 'growth'>;

const sameZones = (a: BowlAsk, b: BowlAsk): boolean => a.zones.join('\n') === b.zones.join('\n');

/** Earlier bowls like one that is asked for, and whether they went to the very same places. */
export type Alike = { readonly needs: readonly Need[]; readonly there: boolean };

/**
 * The bowls of a client that are like the one asked for: of the same product at the very same places, or while there is
 * none, of the same product and like it on new growth alone or not.
 */
export const alike = (needs: readonly Need[], ask: BowlAsk): Alike => {
  const same = needs.filter(({ product, roots }) => product === ask.product && roots === ask.roots);
  const there = same.filter((need) => sameZones(need, ask));
  return there.length > 0 ? { needs: there, there: true } : { needs: same, there: false };
};
