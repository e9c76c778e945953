import { clockText, isDate } from '../text/dates.ts';
import { refusal } from './refusal.ts';

const pad = (n: number): string => String(n).padStart(2, '0');

/** The day to reckon to: the one given with `--on`, else the machine's own date. Throws a refusal when it is no date. */
export const dayOf = (on: string | undefined): string => {
  if (on === undefined) {
    const now = new Date();
    return `${String(now.getFullYear()).padStart(4, '0')}-${pad(now.getMonth() + 1)}-${pad(now.getDate())}`;
  }
  if (!isDate(on)) throw refusal(`\`--on ${on}\` is not a date of the calendar.`, 'Write it as in `--on 2026-09-04`.');
  return on;
};

/** Minutes since midnight: of the time given with `--at`, else of the machine's clock. Throws a refusal as above. */
export const minuteOf = (at: string | undefined): number => {
  if (at === undefined) {
    const now = new Date();
    return now.getHours() * 60 + now.getMinutes();
  }
  const [, hours, minutes] = /^(\d{1,2})[:.](\d{2})$/.exec(at) ?? [];
  if (hours === undefined || Number(hours) > 23 || Number(minutes) > 59)
    throw refusal(`\`--at ${at}\` is not a time of the day.`, 'Write it as in `--at 14:35`.');
  return Number(hours) * 60 + Number(minutes);
};

/** A time as the notes have it: `14:35`. */
export const timeText = (minute: number): string => clockText(minute);
