import type { Awaited } from '../reckon/awaited.ts';
import { type DueWindow, promisedBy } from '../reckon/due-window.ts';
import type { VisitReckoned } from '../reckon/model.ts';
import { sayRhythm } from '../reckon/say-window.ts';
import { clockText } from '../text/dates.ts';
import { dayText } from './days.ts';
import { commas } from './noted.ts';

/** `2026-10-16, Friday, to 2026-10-30, Friday`; `from 2026-12-02, Wednesday`. */
const windowText = ({ first, last }: DueWindow): string => {
  if (last === undefined) return `from ${dayText(first)}`;
  return first === last ? dayText(first) : `${dayText(first)}, to ${dayText(last)}`;
};

/** When the next visit is due by a visit's own `next` line; undefined where the line gives no time, or the day itself. */
export const dueText = (visit: VisitReckoned): string | undefined => {
  const promise = promisedBy(visit);
  return promise === undefined || promise.next.date !== undefined ? undefined : windowText(promise);
};

/** When a client is awaited, with the time she is booked for, or the rhythm it was reckoned from. */
export const awaitedText = ({ time, rhythm, ...window }: Awaited): string =>
  commas([
    windowText(window),
    time !== undefined && clockText(time),
    rhythm && `by her own rhythm, ${sayRhythm(rhythm)}`,
  ]);
