import { compare, div, type Exact, exact, exactOf, mul } from '../text/exact.ts';

/**
 * Taken in mm a day until a salon or a client says otherwise: a choice. A survey over 21 countries
 * found 8 to 13 mm a month: European Journal of Dermatology 26(2), 2016, doi:10.1684/ejd.2015.2726.
 */
export const DEFAULT_GROWTH: Exact = exact(35, 100);

/**
 * What a measured rate may come to, in mm a day: from the slowest person of the 2001 paper (150 micrometres) to two
 * deviations above the fastest mean of the 2005 paper (411 + 2 × 53 micrometres). British Journal of Dermatology, August
 * 2001 (abstract); International Journal of Dermatology 44 (Suppl. 1), 2005, pages 6-9, n = 511.
 */
export const PLAUSIBLE_GROWTH = { low: exact(150, 1000), high: exact(517, 1000) } as const;

/** Whether a rate in mm a day is one that hair has been measured to grow at. */
export function isPlausibleGrowth(mmPerDay: Exact): boolean {
  return compare(mmPerDay, PLAUSIBLE_GROWTH.low) >= 0 && compare(mmPerDay, PLAUSIBLE_GROWTH.high) <= 0;
}

/** Days of the time that a rate is spoken by. A month is a twelfth of 365.25 days. */
const RATE_DAYS: ReadonlyMap<string, number> = new Map([
  ['d', 1],
  ['day', 1],
  ['w', 7],
  ['week', 7],
  ['mo', 365.25 / 12],
  ['month', 365.25 / 12],
]);

/** Days of the unit in `0.35 mm/d`, `1.2 cm/month`; undefined when no rate is spoken by it. */
export function daysOfUnit(word: string): number | undefined {
  return RATE_DAYS.get(word);
}

/** New growth in mm after so many days at a rate in mm a day. */
export function regrowth(days: number, mmPerDay: Exact): Exact {
  return mul(exactOf(days), mmPerDay);
}

/** How many times the growth of its days a measured regrowth may be before a figure or a date is doubted: a choice. */
const DOUBTED = exact(2);

/** The most new growth in mm that is taken as read after so many days at a rate in mm a day. */
export function growthLimit(days: number, mmPerDay: Exact): Exact {
  return mul(regrowth(days, mmPerDay), DOUBTED);
}

/** The rate in mm a day that a measured regrowth in mm teaches. Throws RangeError when `days` is nought. */
export function growthRate(mm: Exact, days: number): Exact {
  return div(mm, exactOf(days));
}
