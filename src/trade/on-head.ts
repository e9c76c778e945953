import { add, div, type Exact, exact, mul, ONE } from '../text/exact.ts';

/**
 * Strength ready for use, in per cent, of a developer mixed at so many parts to one of colour that holds no peroxide.
 * Mass balance: 6 % at 1:1.5 leaves 3.6 %.
 */
export function readyAtRatio(developerPercent: Exact, developerToOne: Exact): Exact {
  return div(mul(developerPercent, developerToOne), add(developerToOne, ONE));
}

/** Peroxide that colour has on the head, in per cent, least and most: Practical Modern Hair Science, chapter 4. */
export const USUAL_READY = { low: exact(3), high: exact(8) } as const;

export const USUAL_READY_SOURCE = 'Practical Modern Hair Science, chapter 4';
