/**
 * Calendar dates as ISO 8601-1:2019 text (`YYYY-MM-DD`, years 0000 to 9999, proleptic Gregorian) and as day numbers,
 * counted from 1970-01-01 = 0; clock times as whole minutes from midnight. No time zones: a note's day is the salon's.
 */

const MONTH_DAYS: readonly number[] = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/** Days from 0000-03-01 to 1970-01-01. */
const EPOCH = 719_468;

const FIRST_DAY = -719_528;
const LAST_DAY = 2_932_896;

type Day = { readonly year: number; readonly month: number; readonly day: number };

function isLeapYear(year: number): boolean {
  return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
}

/** Days in a month of a year, months 1 to 12; 0 for any other month. */
export function daysInMonth(year: number, month: number): number {
  return month === 2 && isLeapYear(year) ? 29 : (MONTH_DAYS[month - 1] ?? 0);
}

/** The digits from `from` to before `to` as a number, or -1 when one is not a digit. */
function digits(text: string, from: number, to: number): number {
  let value = 0;
  for (let i = from; i < to; i += 1) {
    const digit = text.charCodeAt(i) - 48;
    if (digit < 0 || digit > 9) return -1;
    value = value * 10 + digit;
  }
  return value;
}

function dayOf(text: string): Day | undefined {
  if (text.length !== 10 || text[4] !== '-' || text[7] !== '-') return undefined;
  const year = digits(text, 0, 4);
  const month = digits(text, 5, 7);
  const day = digits(text, 8, 10);
  return year >= 0 && day >= 1 && day <= daysInMonth(year, month) ? { year, month, day } : undefined;
}

function needDay(text: string): Day {
  const day = dayOf(text);
  if (day === undefined) throw new RangeError(`not a calendar date: ${text}`);
  return day;
}

const pad = (n: number, width: number): string => String(n).padStart(width, '0');

const textOf = (year: number, month: number, day: number): string => `${pad(year, 4)}-${pad(month, 2)}-${pad(day, 2)}`;

/** Whether the text is a date of the calendar, written `YYYY-MM-DD`. */
export function isDate(text: string): boolean {
  return dayOf(text) !== undefined;
}

/** Days since 1970-01-01, negative before. Throws RangeError when the text is not a date. */
export function dayNumber(text: string): number {
  const { year, month, day } = needDay(text);
  // Years are counted from March, so that the leap day is the last day of its year.
  const y = month > 2 ? year : year - 1;
  const m = month > 2 ? month - 3 : month + 9;
  const leaps = Math.floor(y / 4) - Math.floor(y / 100) + Math.floor(y / 400);
  return 365 * y + leaps + Math.floor((153 * m + 2) / 5) + day - 1 - EPOCH;
}

/** The date of a day number. Throws RangeError outside the years 0000 to 9999 and for a part of a day. */
export function dateOf(days: number): string {
  if (!Number.isInteger(days) || days < FIRST_DAY || days > LAST_DAY) throw new RangeError(`not a day number: ${days}`);
  const shifted = days + EPOCH;
  const era = Math.floor(shifted / 146_097);
  const dayOfEra = shifted - era * 146_097;
  const yearOfEra = Math.floor(
    (dayOfEra - Math.floor(dayOfEra / 1460) + Math.floor(dayOfEra / 36_524) - Math.floor(dayOfEra / 146_096)) / 365,
  );
  const dayOfYear = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const m = Math.floor((5 * dayOfYear + 2) / 153);
  const month = m < 10 ? m + 3 : m - 9;
  const year = era * 400 + yearOfEra + (month <= 2 ? 1 : 0);
  return textOf(year, month, dayOfYear - Math.floor((153 * m + 2) / 5) + 1);
}

/**
 * The date `days` days later. The calendar's own ends are as far as it goes, since notes can hold lengths that lead past
 * them (`hold t 1000000w`). Throws RangeError for what is not a date and for a part of a day.
 */
export function addDays(text: string, days: number): string {
  return dateOf(Math.min(Math.max(dayNumber(text) + days, FIRST_DAY), LAST_DAY));
}

/**
 * The date `months` calendar months later; a day that month lacks becomes its last day. Ends with the calendar, and
 * throws RangeError, as `addDays` does.
 */
export function addMonths(text: string, months: number): string {
  const { year, month, day } = needDay(text);
  if (!Number.isInteger(months)) throw new RangeError(`not a number of months: ${months}`);
  const count = year * 12 + month - 1 + months;
  const [y, m] = [Math.floor(count / 12), (((count % 12) + 12) % 12) + 1];
  if (y < 0 || y > 9999) return dateOf(y < 0 ? FIRST_DAY : LAST_DAY);
  return textOf(y, m, Math.min(day, daysInMonth(y, m)));
}

const UNIT_DAYS = { min: 1 / 1440, h: 1 / 24, d: 1, w: 7 } as const;

/** A unit in which the notes give lengths of time. */
export type TimeUnit = keyof typeof UNIT_DAYS | 'mo';

/**
 * The date a length of time later. Months are counted on the calendar, a day that the month lacks becoming its last; of
 * a part of a month its share of the days of the month that follows. A part of a day counts as `rounded` says.
 */
export function addLength(
  date: string,
  value: number,
  unit: TimeUnit,
  rounded: (days: number) => number = Math.round,
): string {
  if (unit !== 'mo') return addDays(date, rounded(value * UNIT_DAYS[unit]));
  const whole = Math.floor(value);
  const start = addMonths(date, whole);
  return whole === value ? start : addDays(start, rounded((value - whole) * daysBetween(start, addMonths(start, 1))));
}

/** Days from `from` to `to`, negative when `to` is earlier. */
export function daysBetween(from: string, to: string): number {
  return dayNumber(to) - dayNumber(from);
}

/**
 * Age in whole years on a day, negative before birth. One born on 29 February is taken to turn a year older on 1 March
 * in a year without that day: a choice (the later day keeps an age limit the longer), no source.
 */
export function ageOn(born: string, on: string): number {
  const [birth, day] = [needDay(born), needDay(on)];
  const before = day.month < birth.month || (day.month === birth.month && day.day < birth.day);
  return day.year - birth.year - (before ? 1 : 0);
}

/** Whether the text is a month, written `YYYY-MM`. */
export function isMonth(text: string): boolean {
  return isDate(`${text}-01`);
}

/** The last day of a month: `2026-09` gives `2026-09-30`. Throws RangeError when the text is not a month. */
export function monthEnd(month: string): string {
  const { year, month: m } = needDay(`${month}-01`);
  return textOf(year, m, daysInMonth(year, m));
}

/** Minutes from midnight as a 24-hour time; past midnight it starts again (1450 gives `00:10`). */
export function clockText(minutes: number): string {
  const ofDay = ((minutes % 1440) + 1440) % 1440;
  return `${pad(Math.floor(ofDay / 60), 2)}:${pad(ofDay % 60, 2)}`;
}

/** Minutes in a length of time, by the unit it is typed in; a month is a twelfth of 365.25 days. */
export const MINUTES_IN = { min: 1, h: 60, d: 1440, w: 10_080, mo: 43_830 } as const;
