export { isStage, STAGES, type Stage, stageAt, stageBetween, stageDepth, stageIndex, stageSpan } from './stages.ts';

/**
 * Depths of hair from darkest to lightest. Past 10 they are labels of high-lift shades, seldom a natural depth. The
 * published names of depths disagree by a step in places, so a depth is kept as its number and never as a name.
 */
export const DEPTHS = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12] as const;

export type Depth = (typeof DEPTHS)[number];

export type Undercoat = {
  /** The warmth seen once hair is lightened to this depth, as the chart prints it. */
  readonly seen: string;
  /** The same in the stages of the notation, where it has one. */
  readonly stage?: string;
  /** Parts of yellow, red and blue. */
  readonly parts: readonly [yellow: number, red: number, blue: number];
  readonly neutraliser: string;
};

/**
 * Chart C, undercoat by depth 1 to 10: US training page, "Underlying pigment chart"; a single page, and which depth is
 * orange is not agreed elsewhere.
 */
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
