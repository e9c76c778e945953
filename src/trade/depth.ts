export { isStage, STAGES, type Stage, stageAt, stageBetween, stageDepth, stageIndex, stageSpan } from './stages.ts';

/** Depths of hair from darkest to lightest. Past 10 they are labels of high-lift shades, seldom a natural depth. */
export const DEPTHS = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12] as const;

export type Depth = (typeof DEPTHS)[number];

/** The published naming conventions disagree by a step in places, so a depth is kept as its number and never as a name. */
export type DepthConvention = 'A' | 'B' | 'C';

export const DEPTH_CONVENTIONS: Readonly<
  Record<DepthConvention, { readonly source: string; readonly names: readonly string[] }>
> = {
  A: {
    source: 'UK training page, "The hair colour numbering system explained"',
    names: [
      'black',
      'very dark brown',
      'dark brown',
      'medium brown',
      'light brown',
      'dark blonde',
      'medium blonde',
      'light blonde',
      'very light blonde',
      'lightest blonde',
    ],
  },
  B: {
    source: 'consumer page on the International Colour Chart, "Understanding home hair colour", November 2015',
    names: [
      'black',
      'darkest brown',
      'dark brown',
      'medium brown',
      'light brown',
      'lightest brown',
      'dark blonde',
      'medium blonde',
      'light blonde',
      'lightest blonde',
    ],
  },
  C: {
    source: 'US training page, "Underlying pigment chart"',
    names: [
      'black',
      'darkest brown',
      'medium brown',
      'light brown',
      'lightest brown',
      'dark blonde',
      'medium blonde',
      'light blonde',
      'very light blonde',
      'lightest blonde',
    ],
  },
};

/** Common practice, no source. */
const HIGH_LIFT_NAME = 'high-lift blonde';

function wholeName(depth: number, convention: DepthConvention): string | undefined {
  if (depth > 10 && depth <= 12) return HIGH_LIFT_NAME;
  return DEPTH_CONVENTIONS[convention].names[depth - 1];
}

/**
 * The name of a depth under a convention; a depth between two is named by both (`dark blonde to medium blonde`).
 * Undefined outside 1 to 12.
 */
export function depthName(depth: number, convention: DepthConvention = 'A'): string | undefined {
  const low = wholeName(Math.floor(depth), convention);
  const high = wholeName(Math.ceil(depth), convention);
  if (low === undefined || high === undefined) return undefined;
  return low === high ? low : `${low} to ${high}`;
}

export type Undercoat = {
  /** The warmth seen once hair is lightened to this depth, as the chart prints it. */
  readonly seen: string;
  /** The same in the stages of the notation, where it has one. */
  readonly stage?: string;
  /** Parts of yellow, red and blue. */
  readonly parts: readonly [yellow: number, red: number, blue: number];
  readonly neutraliser: string;
};

export const UNDERCOAT_SOURCE =
  'chart C: US training page, "Underlying pigment chart"; a single page, and which depth is orange is not agreed elsewhere';

/** Undercoat by depth 1 to 10. */
export const UNDERCOAT: Readonly<Record<number, Undercoat>> = {
  1: { seen: 'plum-black', parts: [3, 3, 3], neutraliser: 'green' },
  2: { seen: 'red-violet', parts: [3, 3, 2], neutraliser: 'green' },
  3: { seen: 'red', stage: 'red', parts: [3, 3, 1], neutraliser: 'green' },
  4: { seen: 'red-orange', stage: 'red-orange', parts: [3, 2, 1], neutraliser: 'blue-green' },
  5: { seen: 'orange', stage: 'orange', parts: [3, 2, 0.5], neutraliser: 'blue' },
  6: { seen: 'gold-orange', stage: 'orange-gold', parts: [3, 2, 0], neutraliser: 'blue-violet' },
  7: { seen: 'gold', stage: 'gold', parts: [3, 1, 0], neutraliser: 'blue-violet' },
  8: { seen: 'deep yellow', stage: 'gold-yellow', parts: [3, 0, 0], neutraliser: 'violet' },
  9: { seen: 'yellow', stage: 'yellow', parts: [2, 0, 0], neutraliser: 'violet' },
  10: { seen: 'pale yellow', stage: 'pale-yellow', parts: [1, 0, 0], neutraliser: 'violet' },
};
