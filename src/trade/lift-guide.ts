import { compare, type Exact, exact } from '../text/exact.ts';

/** Depths of lift that a source prints for a strength of peroxide, in per cent. */
export type LiftGuide = { readonly percent: Exact; readonly low: number; readonly high: number };

/**
 * Lift by strength of permanent colour on hair with its own pigment: a cosmetology exam guide, "Hair coloring and
 * lightening", which calls 3 % deposit only. A rough guide and nothing more: trade educators write outright that a
 * strength does not give its number of depths ("20 volume doesn't give 2 levels of lift"), and one of them goes by
 * the depth midway between natural hair and the shade instead.
 */
export const LIFT_GUIDE: readonly LiftGuide[] = [
  { percent: exact(3), low: 0, high: 0 },
  { percent: exact(6), low: 1, high: 2 },
  { percent: exact(9), low: 2, high: 3 },
  { percent: exact(12), low: 3, high: 4 },
];

export const LIFT_GUIDE_SOURCE = 'a cosmetology exam guide; trade educators disagree';

/** The guide for a strength in per cent: its own row, else that of the next stronger one. Undefined above the last. */
export function guideLift(percent: Exact): LiftGuide | undefined {
  return LIFT_GUIDE.find((row) => compare(percent, row.percent) <= 0);
}

/** Depths that a high-lift shade is taken to lift beyond permanent colour of the same strength: common practice, no source. */
export const HIGH_LIFT_MORE = 1;

/** The darkest natural depth that high-lift shades are used on: common practice, no source. */
export const HIGH_LIFT_FROM = 6;

/** The lightest depth hair itself reaches; shades numbered above it name strength of lift, not a depth. */
export const LIGHTEST = 10;
