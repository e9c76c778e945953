import { developersOf, type Outline, outlinesOf, type Shelf } from '../../journal/shelf.ts';

/**
 * What a product's full name begins with where it has several words: nearly always the maker's or the line's name
 * (`Larkfield cream`, `Larkfield filler`). Undefined for a single word, which may be anything.
 */
export const lineWord = ({ full }: Outline): string | undefined => {
  const [first, second] = full.trim().toLowerCase().split(/\s+/u);
  return second === undefined ? undefined : first;
};

/** Whether a developer evidently belongs to a colour: by the word both full names begin with, or by its short name. */
const isNamedAfter = (developer: Outline, item: Outline): boolean => {
  const word = lineWord(item);
  if (word !== undefined && lineWord(developer) === word) return true;
  return developer.name.startsWith(`${item.name}-`);
};

/** The developers of an item, and whether its `uses` line says so or only their names do. */
export type OwnDevelopers = { readonly all: readonly Outline[]; readonly declared: boolean };

const itemNamed = (name: string, shelf: Shelf): Outline | undefined => {
  const isNamed = (one: Outline): boolean => one.name === name;
  return developersOf(shelf).find(isNamed) ?? outlinesOf(shelf).find(isNamed);
};

/**
 * The developers that the shelf shows to be an item's own: those its `uses` lines name, else those named after it. None
 * where the shelf does not tell.
 */
export const ownDevelopers = (item: Outline, shelf: Shelf): OwnDevelopers => {
  if (item.uses.length > 0)
    return {
      all: item.uses.flatMap((name) => itemNamed(name, shelf) ?? []),
      declared: true,
    };
  const named = developersOf(shelf).filter((other) => isNamedAfter(other, item));
  return { all: named, declared: false };
};

/** Whether some item of the shelf names a developer as one of its own. */
export const isUsedBySome = (developer: Outline, shelf: Shelf): boolean =>
  outlinesOf(shelf).some(({ uses }) => uses.includes(developer.name));

/** A short name without the figure at its end: `dev` of `dev-6`. */
const stem = ({ name }: Outline): string => name.replace(/[-.\d]+$/u, '');

/** Whether two developers evidently are strengths of one: full names that begin alike, or `dev-3` and `dev-6`. */
export const areOfOneSeries = (a: Outline, b: Outline): boolean => {
  if (a.name === b.name) return true;
  const [word, other] = [lineWord(a), lineWord(b)];
  return word === undefined || other === undefined ? stem(a) === stem(b) : word === other;
};
