import type { SalonSettings } from '../journal/salon.ts';
import type { Clock } from '../records/schema/values.ts';
import type { Minute } from './model.ts';

/** A time of day with its half of the day settled, or why it could not be. Relative times have no minute yet. */
export type Settled = {
  readonly minute: Minute | undefined;
  readonly doubt?: 'either-half-day' | 'outside-hours';
};

const HALF_DAY = 720;
const DAY = 1440;

/**
 * The minute of the day that a typed time means. A time with two readings is the one inside the salon's hours; without
 * an `hours` line it is as written. When the hours hold both readings or neither, it is as written and in doubt.
 */
export const settleClock = (clock: Clock, hours: SalonSettings['hours']): Settled => {
  const { minutes, other } = clock;
  if (minutes === undefined || other === undefined || hours === undefined) return { minute: minutes };
  const inside = (minute: number): boolean => minute >= hours.from && minute <= hours.to;
  const [first, second] = [inside(minutes), inside(other)];
  if (first !== second) return { minute: first ? minutes : other };
  return { minute: minutes, doubt: first ? 'either-half-day' : 'outside-hours' };
};

/** A salon's day holds its applications within six hours, so a longer pause than the rest of the day is the night. */
const NIGHT = 18 * 60;

/**
 * The minute at which the work of a visit begins, given when things went on and when the client came. It is the
 * earliest, but for work that runs past midnight: there it is the first after a pause of more than eighteen hours.
 */
export const dayBegins = (minutes: readonly Minute[]): Minute | undefined => {
  const sorted = [...minutes].sort((a, b) => a - b);
  return sorted.find((minute, index) => index > 0 && minute - (sorted[index - 1] ?? minute) > NIGHT) ?? sorted[0];
};

/** The same minute, a day later when it is more than twelve hours before the work begins. */
export const pastMidnight = (minute: Minute, begins: Minute | undefined): Minute =>
  begins !== undefined && minute < begins - HALF_DAY ? minute + DAY : minute;

/** The end of a span: a day later when it is more than twelve hours before the beginning. */
export const endOfSpan = (from: Minute, to: Minute): Minute => (to < from - HALF_DAY ? to + DAY : to);
