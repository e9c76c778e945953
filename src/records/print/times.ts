import type { Clock, Period } from '../schema/values.ts';
import type { Said } from './said.ts';

const HOUR = 60;
const NOON = 12 * HOUR;

const pad = (minutes: number): string => String(minutes).padStart(2, '0');

/** Whether only `am` or `pm` says which half of the day it is: 10 to 12 o'clock, and no other reading. */
const needsHalf = ({ minutes = 0, after, other }: Said<Clock>): boolean =>
  after === undefined && other === undefined && minutes >= 10 * HOUR && minutes < 13 * HOUR;

/** A time of day by its half: `10:35am`. */
const halfDay = (minutes: number): string => {
  const hour = Math.floor(minutes / HOUR) % 12;
  return `${hour === 0 ? 12 : hour}:${pad(minutes % HOUR)}${minutes >= NOON ? 'pm' : 'am'}`;
};

const ofDay = (clock: Said<Clock>, byHalf: boolean): string => {
  const { minutes = 0, after, head, other } = clock;
  if (head !== undefined) return `0+${head}`;
  if (after !== undefined) return `+${after}`;
  if (byHalf) return halfDay(minutes);
  const hour = Math.floor(minutes / HOUR);
  // With both readings open an hour is typed in as few figures as it has.
  return `${other === undefined ? pad(hour) : hour}:${pad(minutes % HOUR)}`;
};

const hedge = ({ about }: Said<Clock>): string => (about ? '~' : '');

/** `14:35`, `2:38` where the half of the day is open, `10:35am` where it is not, `+25` */
export const clockText = (clock: Said<Clock>): string => `${hedge(clock)}${ofDay(clock, needsHalf(clock))}`;

/** Whether one `am` or `pm`, or none, can stand for both ends of a span. */
const isJoined = (from: Said<Clock>, to: Said<Clock>, byHalf: boolean): boolean =>
  from.after === undefined &&
  from.head === undefined &&
  from.about === to.about &&
  (!byHalf || [from, to].every(({ minutes = 0, other }) => other === undefined && minutes < 24 * HOUR));

/** `14:35-14:55`; `~14:35 to 14:55` where one end alone is hedged. */
export const periodText = ({ from, to }: Said<Period>): string => {
  if (to === undefined) return clockText(from);
  const byHalf = needsHalf(from) || needsHalf(to);
  return isJoined(from, to, byHalf)
    ? `${hedge(from)}${ofDay(from, byHalf)}-${ofDay(to, byHalf)}`
    : `${clockText(from)} to ${clockText(to)}`;
};
