import { compare, div, type Exact, exact, exactOf, mul } from '../text/exact.ts';

export type PublishedRate = {
  readonly key: string;
  /** Mean of the group measured, and one standard deviation, in mm a day. */
  readonly mean: Exact;
  readonly spread: Exact;
  readonly source: string;
};

function rate(key: string, mean: number, spread: number, source: string): PublishedRate {
  return { key, mean: exact(mean, 1000), spread: exact(spread, 1000), source };
}

const PAPER_2001 = 'British Journal of Dermatology, August 2001 (abstract)';
const PAPER_2005 = 'International Journal of Dermatology 44 (Suppl. 1), 2005, pages 6-9, n = 511';

/**
 * Measured growth of scalp hair. The groups overlap so far that a later survey calls them one continuum, so a rate is
 * keyed by paper and value and nothing about a person's origin is kept: her own regrowth says more.
 */
export const PUBLISHED_RATES: readonly PublishedRate[] = [
  rate('2001-256', 256, 44, PAPER_2001),
  rate('2001-396', 396, 55, PAPER_2001),
  rate('2005-280', 280, 50, PAPER_2005),
  rate('2005-367', 367, 56, PAPER_2005),
  rate('2005-411', 411, 53, PAPER_2005),
];

/** Growth in mm a month over 21 countries: European Journal of Dermatology 26(2), 2016, doi:10.1684/ejd.2015.2726. */
export const SURVEY_RANGE = { low: exact(8), high: exact(13) } as const;

/** Taken in mm a day until a salon or a client says otherwise: a choice, near the middle of the survey's range. */
export const DEFAULT_GROWTH: Exact = exact(35, 100);

/**
 * What a measured rate may come to, in mm a day: from the slowest person of the 2001 paper (150 micrometres) to two
 * deviations above the fastest mean of the 2005 paper (411 + 2 × 53 micrometres).
 */
export const PLAUSIBLE_GROWTH = { low: exact(150, 1000), high: exact(517, 1000) } as const;

/** Whether a rate in mm a day is one that hair has been measured to grow at. */
export function isPlausibleGrowth(mmPerDay: Exact): boolean {
  return compare(mmPerDay, PLAUSIBLE_GROWTH.low) >= 0 && compare(mmPerDay, PLAUSIBLE_GROWTH.high) <= 0;
}

/** Days of the time that a rate is spoken by. A month is the mean one of the Gregorian calendar, 146097 days in 4800. */
const RATE_DAYS: ReadonlyMap<string, number> = new Map([
  ['d', 1],
  ['w', 7],
  ['mo', 146_097 / 4800],
]);

/** Days of the unit in `0.35 mm/d` or `1.2 cm/mo`; undefined when no rate is spoken by it. */
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
