import {
  type FromTo,
  HEAD_AREA_FACTS,
  HEAD_AREAS,
  HEAD_SURFACE,
  type HeadArea,
  SECTION_FACTS,
  SECTION_WIDTH,
  UNCOUNTED_SHARE,
} from '../../trade/head-areas.ts';
import type { BowlReckoned } from '../model.ts';
import type { Placed } from './placed.ts';
import type { HeadPlace } from './places.ts';
import { isLightening } from './services.ts';

/** How much of the head was lightened, in per cent, as an estimate from least to most. */
export type LightenedShare = FromTo & {
  /** Places that the estimate leaves out: where they lie, or how much of them was taken, is not noted. */
  readonly without: readonly string[];
  /** What it takes for granted: the areas, and the techniques by which sections were counted. */
  readonly areas: readonly HeadArea[];
  readonly techniques: readonly SectionTechnique[];
  /** Places where the new growth alone was lightened. */
  readonly newGrowth: readonly string[];
  /** Whether it was nowhere more than the new growth. */
  readonly onlyNewGrowth: boolean;
};

/** A technique whose sections are counted. */
export type SectionTechnique = keyof typeof SECTION_FACTS;

/** A place with the areas that the estimate counts for it. */
type Spot = { readonly place: HeadPlace; readonly areas: readonly HeadArea[] };

const areasOf = (place: HeadPlace, named: ReadonlySet<HeadArea>): readonly HeadArea[] => {
  const words = place.zone.split(' ');
  if (words.includes('rest')) return HEAD_AREAS.filter((area) => !named.has(area));
  return place.whole && place.areas.length === 0 ? HEAD_AREAS : place.areas;
};

const isNewGrowth = ({ along }: HeadPlace): boolean => along.length > 0 && along.every((word) => word === 'roots');

/** Sides of an area that a place takes, of two. */
const sidesOf = ({ half }: HeadPlace): number => (half === undefined ? 2 : 1);

const isSectioned = (technique: string | undefined): technique is SectionTechnique =>
  technique !== undefined && Object.hasOwn(SECTION_FACTS, technique);

/** Millimetres of hair, over both sides, that the sections of a line are stacked across. */
const depthOf = (spots: readonly Spot[]): number =>
  spots.reduce(
    (total, { place, areas }) =>
      total + areas.reduce((sum, area) => sum + HEAD_AREA_FACTS[area].depth * sidesWhenStacked(area, place), 0),
    0,
  );

/** A section runs right across an area that is not sided, so its depth counts once. */
const sidesWhenStacked = (area: HeadArea, place: HeadPlace): number =>
  HEAD_AREA_FACTS[area].sided ? sidesOf(place) : 1;

/** Square millimetres of the areas that a line takes. */
const surfaceOf = (spots: readonly Spot[]): number =>
  spots.reduce(
    (total, { place, areas }) =>
      total +
      areas.reduce((sum, area) => sum + ((HEAD_AREA_FACTS[area].percent / 100) * HEAD_SURFACE * sidesOf(place)) / 2, 0),
    0,
  );

/** The share of its areas that a line takes; undefined when the note does not tell. */
const takenBy = ({ technique, counted, sections, mirror }: Placed, spots: readonly Spot[]): FromTo | undefined => {
  if (counted === undefined || sections === undefined || !isSectioned(technique)) {
    if (technique === undefined && counted === undefined) return { least: 1, most: 1 };
    return technique === undefined ? undefined : UNCOUNTED_SHARE[technique];
  }
  const { deep, taken } = SECTION_FACTS[technique];
  const allSided = spots.every(({ areas }) => areas.every((area) => HEAD_AREA_FACTS[area].sided));
  const [surface, depth] = [Math.max(1, surfaceOf(spots)), Math.max(1, depthOf(spots))];
  // Mirrored sections of an area across the middle are half as wide at most; none is wider than its area.
  const across = surface / depth / (mirror && !allSided ? 2 : 1);
  const share = (mm: number, width: number, part: number): number =>
    Math.min(1, (sections * mm * Math.min(width, across)) / surface) * part;
  return {
    least: share(deep.least, SECTION_WIDTH.least, taken.least),
    most: share(deep.most, SECTION_WIDTH.most, taken.most),
  };
};

/** The part of a line's hair that bowls which lighten have. */
const partOf = ({ bowls, byBowl, sections }: Placed, lightening: ReadonlySet<string>): number => {
  const own = bowls.filter((bowl) => lightening.has(bowl)).length / Math.max(1, bowls.length);
  if (byBowl.length === 0 || sections === undefined || sections === 0) return own;
  return byBowl.reduce((sum, one) => sum + (lightening.has(one.bowl) ? one.sections : 0), 0) / sections;
};

/**
 * The share of the head that the bowls which lighten were put on, by the areas, depths and shares of
 * `trade/head-areas.ts`. No area counts more than once. Undefined when nothing that lightens was placed.
 */
export const lightenedShare = (
  bowls: readonly BowlReckoned[],
  placed: readonly Placed[],
): LightenedShare | undefined => {
  const lightening = new Set(bowls.filter(isLightening).map(({ name }) => name));
  const lines = placed.filter((one) => one.bowls.some((bowl) => lightening.has(bowl)));
  if (lines.length === 0) return undefined;
  const named = new Set(
    placed.flatMap(({ places }) => places.filter(({ whole }) => !whole).flatMap(({ areas }) => areas)),
  );
  const least = new Map<HeadArea, number>();
  const most = new Map<HeadArea, number>();
  const without = new Set<string>();
  const techniques = new Set<SectionTechnique>();
  for (const line of lines) {
    const spots = line.places.map((place) => ({ place, areas: areasOf(place, named) }));
    const taken = takenBy(line, spots);
    const part = partOf(line, lightening);
    for (const { place, areas } of spots) {
      if (!place.known || areas.length === 0 || taken === undefined) {
        without.add(place.zone);
        continue;
      }
      if (line.counted !== undefined && isSectioned(line.technique)) techniques.add(line.technique);
      for (const area of areas) {
        const reach = (part * sidesOf(place)) / 2;
        least.set(area, Math.min(1, (least.get(area) ?? 0) + taken.least * reach));
        most.set(area, Math.min(1, (most.get(area) ?? 0) + taken.most * reach));
      }
    }
  }
  const percent = (shares: ReadonlyMap<HeadArea, number>): number =>
    [...shares].reduce((sum, [area, share]) => sum + HEAD_AREA_FACTS[area].percent * share, 0);
  const places = lines.flatMap((line) => line.places);
  const newGrowth = places.filter(isNewGrowth).map(({ zone }) => zone);
  return {
    newGrowth: [...new Set(newGrowth)],
    onlyNewGrowth: newGrowth.length > 0 && newGrowth.length === places.length,
    least: Math.round(percent(least)),
    most: Math.round(percent(most)),
    without: [...without],
    areas: HEAD_AREAS.filter((area) => (most.get(area) ?? 0) > 0),
    techniques: [...techniques],
  };
};
