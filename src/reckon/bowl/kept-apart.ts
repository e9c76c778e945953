import type { ShelfItem } from '../../journal/shelf.ts';
import { recently } from '../../text/recently.ts';
import { areKeptApart, HAVE_OWN_DEVELOPER, isThinner } from '../../trade/mixing.ts';
import type { BowlReckoned, Portion } from '../model.ts';
import { basesIn, portionsIn } from './contents.ts';
import { areOfOneSeries, lineWord, ownDevelopers } from './own-developers.ts';

type Shelf = ReadonlyMap<string, ShelfItem>;

/** Two things in one bowl that are mixed apart, and why: by what they are, or by the line they come from. */
export type KeptApart = { readonly one: ShelfItem; readonly other: ShelfItem; readonly by: 'kind' | 'line' };

/** Whether an item is in the bowl only to thin the rest: all of it is clear or pastel. */
const isThinning = (item: ShelfItem, portions: readonly Portion[]): boolean =>
  portions.every((portion) => portion.item !== item || (portion.shade !== undefined && isThinner(portion.shade)));

/**
 * Whether two products come from lines with developers of their own: none in common; or, being of different kinds, names
 * that begin otherwise. Only where the shelf shows the developers of both.
 */
const areOfTwoLines = (one: ShelfItem, other: ShelfItem, shelf: Shelf): boolean => {
  if (!HAVE_OWN_DEVELOPER.has(one.kind) || !HAVE_OWN_DEVELOPER.has(other.kind)) return false;
  const [word, otherWord] = [lineWord(one), lineWord(other)];
  if (word !== undefined && word === otherWord) return false;
  const [mine, theirs] = [ownDevelopers(one, shelf).all, ownDevelopers(other, shelf).all];
  if (mine.length === 0 || theirs.length === 0) return false;
  if (!mine.some((developer) => theirs.some((second) => areOfOneSeries(developer, second)))) return true;
  return one.kind !== other.kind && word !== undefined && otherWord !== undefined;
};

const apartOf = (bowl: BowlReckoned, shelf: Shelf): KeptApart | undefined => {
  const bases = basesIn(bowl);
  if (bases.length < 2) return undefined;
  const portions = portionsIn(bowl);
  const full = bases.filter((item) => !isThinning(item, portions));
  for (const [index, one] of full.entries())
    for (const other of full.slice(index + 1)) {
      if (one.kind === undefined || other.kind === undefined) continue;
      if (areKeptApart(one.kind, other.kind)) return { one, other, by: 'kind' };
      if (areOfTwoLines(one, other, shelf)) return { one, other, by: 'line' };
    }
  return undefined;
};

/** The first two things in a bowl that do not belong into one bowl. */
export const keptApart: (bowl: BowlReckoned, shelf: Shelf) => KeptApart | undefined = recently(apartOf);
