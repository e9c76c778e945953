import { dayNumber, daysBetween } from '../text/dates.ts';

const WEEKDAYS = ['Thursday', 'Friday', 'Saturday', 'Sunday', 'Monday', 'Tuesday', 'Wednesday'] as const;

/** The day of the week of a date, worked out from its day number (1970-01-01 was a Thursday). */
export const weekday = (date: string): string => WEEKDAYS[((dayNumber(date) % 7) + 7) % 7] ?? '';

/** `2026-09-04, Friday`. */
export const dayText = (date: string): string => `${date}, ${weekday(date)}`;

const count = (n: number, one: string): string => `${n} ${one}${n === 1 ? '' : 's'}`;

/** The time from one date to a later one: `11 weeks and 5 days`, `3 days`, `the same day`. */
export const timeBetween = (from: string, to: string): string => {
  const days = daysBetween(from, to);
  if (days === 0) return 'the same day';
  const [weeks, rest] = [Math.floor(days / 7), days % 7];
  return [weeks === 0 ? '' : count(weeks, 'week'), rest === 0 ? '' : count(rest, 'day')].filter(Boolean).join(' and ');
};
