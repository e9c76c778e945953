import { type Awaited, awaitedAfter } from '../reckon/ahead/awaited.ts';
import { type DueWindow, promisedBy } from '../reckon/ahead/due-window.ts';
import { sayRhythm } from '../reckon/ahead/say-window.ts';
import type { VisitReckoned } from '../reckon/model.ts';
import { clockText } from '../text/dates.ts';
import { dayText, timeBetween } from './days.ts';
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

/** How far a day is from the ones that were meant: `; 2026-11-25 is 3 weeks and 5 days later`. */
const distance = ({ first, last }: DueWindow, on: string): string => {
  if (on < first) return `; ${on} is ${timeBetween(on, first)} earlier`;
  return last !== undefined && on > last ? `; ${on} is ${timeBetween(last, on)} later` : '';
};

/** Why the day is not the one that the plan names: she came after it, and nothing was planned then. */
const passed = (planned: VisitReckoned | undefined, before: readonly VisitReckoned[]): string => {
  const promise = planned && promisedBy(planned);
  const last = before.at(-1);
  if (promise === undefined || last === undefined || promise.first > last.date) return '';
  return `; what was noted on ${planned?.date}, ${windowText(promise)}, was past when she came on ${last.date}`;
};

/**
 * When she is awaited, as a list item: by the visits before a day, and those noted ahead. `planned` is the visit whose
 * plan stands beside it, `seen` the day on which she is here, where she is.
 */
export const dueItems = (
  before: readonly VisitReckoned[],
  ahead: readonly VisitReckoned[],
  { on, planned, seen }: { readonly on: string; readonly planned: VisitReckoned | undefined; readonly seen: boolean },
): string[] => {
  const awaited = awaitedAfter([...before, ...ahead], on);
  if (awaited === undefined) return [];
  const why = awaited.by === 'rhythm' ? passed(planned, before) : '';
  return [`- **Due** ${awaitedText(awaited)}${why}${seen ? distance(awaited, on) : ''}`];
};
