import type { Duration } from '../records/schema/values.ts';
import { addLength, addMonths, isDate, isMonth } from '../text/dates.ts';

/** The first day of a day, a month or a year as typed. */
export const firstDayOf = (when: string): string =>
  isDate(when) ? when : isMonth(when) ? `${when}-01` : `${when}-01-01`;

/**
 * The day on which a length of time from a day is over; of a range (`6-8w`) the far end. Months are counted on the
 * calendar, and a part of a day or month counts as a whole one.
 */
export const dayAfter = (date: string, { value, to, unit }: Duration): string => {
  const length = to ?? value;
  return unit === 'mo' ? addMonths(date, Math.ceil(length)) : addLength(date, length, unit, Math.ceil);
};
