import type { SalonSettings } from '../../journal/salon.ts';
import type { Clock } from '../../records/schema/values.ts';
import type { Minute } from '../model.ts';

type Hours = SalonSettings['hours'];

/** Why the half of the day is not settled: the hours hold both readings, or neither. */
export type Doubt = {
  readonly kind: 'either-half-day' | 'outside-hours';
  readonly read: Minute;
  readonly other: Minute;
};

const HALF_DAY = 720;
const DAY = 1440;

/** Minutes that a time is outside the hours; nought within them. */
const outside = (minute: Minute, { from, to }: NonNullable<Hours>): number => Math.max(from - minute, minute - to, 0);

/**
 * The minute of the day that a typed time means; undefined for one that counts from an `on`. A time with two readings is
 * the one inside the salon's hours; without an `hours` line it is as written. When the hours hold both readings it is as
 * written too, and when they hold neither it is the nearer one.
 */
export const minuteOf = ({ minutes, other }: Clock, hours: Hours): Minute | undefined => {
  if (minutes === undefined || other === undefined || hours === undefined) return minutes;
  return outside(minutes, hours) <= outside(other, hours) ? minutes : other;
};

/** The doubt about a typed time, where the salon's hours do not settle it. */
export const doubtOf = ({ minutes, other }: Clock, hours: Hours): Doubt | undefined => {
  if (minutes === undefined || other === undefined || hours === undefined) return undefined;
  const [first, second] = [outside(minutes, hours), outside(other, hours)];
  if ((first === 0) !== (second === 0)) return undefined;
  const [read, rest] = first <= second ? [minutes, other] : [other, minutes];
  return { kind: first === 0 ? 'either-half-day' : 'outside-hours', read, other: rest };
};

/** A typed time as it is read, and the doubt about it where there is one. */
export const settleClock = (
  clock: Clock,
  hours: Hours,
): { readonly minute: Minute | undefined; readonly doubt: Doubt | undefined } => ({
  minute: minuteOf(clock, hours),
  doubt: doubtOf(clock, hours),
});

/** A salon's day holds its applications within six hours, so a longer pause than the rest of the day is the night. */
const NIGHT = 18 * 60;

/**
 * The minute at which the work of a visit begins, given when things went on and when the client came. It is the
 * earliest, but for work that runs past midnight: there it is the first after a pause of more than eighteen hours.
 */
export const dayBegins = (minutes: readonly Minute[]): Minute | undefined => {
  const [some] = minutes;
  if (some === undefined) return undefined;
  let first = some;
  let last = some;
  for (const minute of minutes) {
    if (minute < first) first = minute;
    else if (minute > last) last = minute;
  }
  if (last - first <= NIGHT) return first;
  const sorted = [...minutes].sort((a, b) => a - b);
  let before = Number.POSITIVE_INFINITY;
  for (const minute of sorted) {
    if (minute - before > NIGHT) return minute;
    before = minute;
  }
  return sorted[0];
};

/** The same minute, a day later when it is more than twelve hours before the work begins. */
export const pastMidnight = (minute: Minute, begins: Minute | undefined): Minute =>
  begins !== undefined && minute < begins - HALF_DAY ? minute + DAY : minute;

/** The end of a span: a day later when it is more than twelve hours before the beginning. */
export const endOfSpan = (from: Minute, to: Minute): Minute => (to < from - HALF_DAY ? to + DAY : to);
