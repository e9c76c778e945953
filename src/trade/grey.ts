import { type Exact, exact } from '../text/exact.ts';

/** Parts of the shade that is wanted to parts of the natural series, for a share of grey in per cent. */
export type GreyBase = {
  readonly from: number;
  readonly to: number;
  readonly target: number;
  readonly natural: number;
};

/**
 * How much natural series goes with the wanted shade on grey hair: a trade test of one maker's colour (a US trade
 * magazine, "Swatch smarts", 2011). Its rows share 40 and 70, so at those shares both hold.
 */
export const GREY_BASES: readonly GreyBase[] = [
  { from: 25, to: 40, target: 3, natural: 1 },
  { from: 40, to: 70, target: 1, natural: 1 },
  { from: 70, to: 100, target: 1, natural: 3 },
];

export const GREY_BASE_SOURCE = 'a trade test of 2011, one maker';

/** The rows that a share of grey in per cent falls in: two where they meet, none below the first. */
export function greyBases(percent: number): readonly GreyBase[] {
  return GREY_BASES.filter(({ from, to }) => from <= percent && percent <= to);
}

/** The part of the colour, from nought to one, that a row gives to the natural series. */
export function naturalShare({ target, natural }: GreyBase): Exact {
  return exact(natural, target + natural);
}

/** The share of grey, in per cent, from which a cover without natural series is looked at: its `1:1` row read generously. */
export const GREY_TO_BASE = 50;

/** The peroxide, in per cent, that grey is covered with: a cosmetology exam guide calls 20 volumes standard for it. */
export const GREY_COVER: Exact = exact(6);
