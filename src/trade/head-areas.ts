/** The scalp cut into areas that do not overlap, front to back. */
export const HEAD_AREAS = [
  'hairline',
  'fringe',
  'front',
  'parting',
  'temples',
  'top',
  'sides',
  'crown',
  'back',
  'occipital',
  'nape',
] as const;

export type HeadArea = (typeof HEAD_AREAS)[number];

export type HeadAreaFacts = {
  /** Share of the hair-bearing head, per cent. */
  readonly percent: number;
  /** Millimetres across which sections are taken one after the other; of a sided area on each side. */
  readonly depth: number;
  /** One area on each side of the head. */
  readonly sided: boolean;
};

/**
 * How large the areas are, for an estimate and no more: common practice, no source. `back` is what lies between the crown
 * and the occipital bone.
 */
export const HEAD_AREA_FACTS: Readonly<Record<HeadArea, HeadAreaFacts>> = {
  hairline: { percent: 4, depth: 12, sided: false },
  fringe: { percent: 5, depth: 35, sided: false },
  front: { percent: 7, depth: 45, sided: false },
  parting: { percent: 3, depth: 60, sided: false },
  temples: { percent: 6, depth: 35, sided: true },
  top: { percent: 14, depth: 100, sided: false },
  sides: { percent: 17, depth: 70, sided: true },
  crown: { percent: 12, depth: 70, sided: false },
  back: { percent: 14, depth: 60, sided: false },
  occipital: { percent: 9, depth: 50, sided: false },
  nape: { percent: 9, depth: 50, sided: false },
};

/** A part from least to most: of one, or in millimetres. */
export type FromTo = { readonly least: number; readonly most: number };

/**
 * How deep one counted section is taken, in millimetres, and the share of its hair that is taken. Common practice, no
 * source: books and magazines show sections and give no figures.
 */
export const SECTION_FACTS = {
  slice: { deep: { least: 2, most: 5 }, taken: { least: 1, most: 1 } },
  weave: { deep: { least: 2, most: 5 }, taken: { least: 0.4, most: 0.6 } },
  'fine-weave': { deep: { least: 2, most: 4 }, taken: { least: 0.4, most: 0.6 } },
  babylight: { deep: { least: 1, most: 3 }, taken: { least: 0.3, most: 0.5 } },
  paint: { deep: { least: 10, most: 20 }, taken: { least: 0.4, most: 0.8 } },
  panel: { deep: { least: 10, most: 20 }, taken: { least: 0.8, most: 1 } },
  block: { deep: { least: 10, most: 20 }, taken: { least: 1, most: 1 } },
} as const satisfies Readonly<Record<string, { readonly deep: FromTo; readonly taken: FromTo }>>;

/**
 * Square millimetres of the hair-bearing head, from which the width of an area follows by its share and its depth, and
 * the width of one section in millimetres, which seldom runs right across: a foil is cut about so wide. Common practice,
 * no source.
 */
export const HEAD_SURFACE = 65_000;
export const SECTION_WIDTH: FromTo = { least: 60, most: 100 };

/** The share of an area taken where no sections are counted. Common practice, no source. */
export const UNCOUNTED_SHARE: Readonly<Record<string, FromTo>> = {
  paint: { least: 0.3, most: 0.6 },
  panel: { least: 0.6, most: 1 },
  block: { least: 1, most: 1 },
  apply: { least: 1, most: 1 },
  'comb-through': { least: 1, most: 1 },
  melt: { least: 1, most: 1 },
};

/** Where the figures of this file come from, as a page says it. */
export const HEAD_AREAS_SOURCE = 'common practice, no source';

const AREAS: ReadonlySet<string> = new Set(HEAD_AREAS);

/** Whether a word, in small letters, is an area of the scalp. */
export function isHeadArea(word: string): word is HeadArea {
  return AREAS.has(word);
}
