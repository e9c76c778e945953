import type { Placed } from '../../reckon/head/placement.ts';
import type { HeadPlace } from '../../reckon/head/places.ts';
import { HEAD_AREA_FACTS, type HeadArea } from '../../trade/head-areas.ts';

/** The sections of one line dealt out over the areas and sides that it names, to be drawn. */

/** The part of a line on one area, and on one side of it where the area has two. */
export type Spread = {
  readonly placed: Placed;
  readonly area: HeadArea;
  readonly side: 'left' | 'right' | undefined;
  /** A side of an area that runs across the middle. */
  readonly half: 'left' | 'right' | undefined;
  /** How many sections are on it; undefined when they are not counted. */
  readonly count: number | undefined;
  /** The bowl of each section drawn on it, of those that there may be room for. */
  readonly bowls: readonly string[];
};

/** More sections than any area has room to be drawn with; a slip of the hand may count a million. */
const MOST_DRAWN = 400;

type Spot = Pick<Spread, 'area' | 'side' | 'half'>;

const spotsOf = ({ areas, half }: HeadPlace): Spot[] =>
  areas.flatMap((area): Spot[] => {
    if (!HEAD_AREA_FACTS[area].sided) return [{ area, side: undefined, half }];
    const sides = half === undefined ? (['left', 'right'] as const) : [half];
    return sides.map((side) => ({ area, side, half: undefined }));
  });

/** Sections over spots by how deep each is, so that all of them are dealt out. */
const dealtOver = (spots: readonly Spot[], count: number): number[] => {
  const depths = spots.map(({ area }) => HEAD_AREA_FACTS[area].depth);
  const whole = depths.reduce((sum, depth) => sum + depth, 0);
  let depth = 0;
  let dealt = 0;
  return depths.map((own) => {
    depth += own;
    const upTo = Math.round((count * depth) / whole);
    const here = upTo - dealt;
    dealt = upTo;
    return here;
  });
};

/** A line, area by area and side by side. A mirrored line has its count on either side; others share theirs. */
export const spread = (placed: Placed): Spread[] => {
  const spots = placed.places.filter(({ areas, whole }) => areas.length > 0 && !whole).flatMap(spotsOf);
  const { counted, mirror, turn, bowls } = placed;
  if (counted === undefined) return spots.map((spot) => ({ ...spot, placed, count: undefined, bowls: [] }));
  const order = turn.length > 0 ? turn : bowls;
  const bySide = mirror
    ? [spots.filter(({ side }) => side !== 'right'), spots.filter(({ side }) => side === 'right')]
    : [spots];
  return bySide.flatMap((own) => {
    let next = 0;
    return dealtOver(own, counted).map((count, index): Spread => {
      const taken = Array.from(
        { length: Math.min(count, MOST_DRAWN) },
        (_, section) => order[(next + section) % order.length] ?? '',
      );
      next += count;
      return { ...(own[index] as Spot), placed, count, bowls: taken };
    });
  });
};
