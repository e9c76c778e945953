import type { Next } from '../../records/schema/visit.ts';
import { minuteOf } from '../clock/settle.ts';
import type { VisitReckoned } from '../model.ts';
import { type DueWindow, promised, type Rhythm, rhythm, rhythmWindow, waitWindow } from './due-window.ts';

/** When a client is awaited, and by what. */
export type Awaited = DueWindow & {
  /** A visit noted ahead or a `next` with its day, a `next` that gives a time, or her own rhythm. */
  readonly by: 'booked' | 'next' | 'rhythm';
  /** Minutes since midnight, where she is booked with a time. */
  readonly time: number | undefined;
  readonly next: Next | undefined;
  readonly rhythm: Rhythm | undefined;
};

/** Awaited for a visit that is noted ahead. */
export const notedFor = ({ date, visit, salon }: VisitReckoned): Awaited => {
  const time = visit.entry.time && minuteOf(visit.entry.time, salon.hours);
  return { first: date, last: date, by: 'booked', time, next: undefined, rhythm: undefined };
};

/** By what stands in the notes of the visits up to a day: what they promise, then her own rhythm. */
const awaitedBy = (past: readonly VisitReckoned[]): Awaited | undefined => {
  const promise = promised(past);
  if (promise !== undefined) {
    const { first, last, next, booked } = promise;
    const time = booked && next.time !== undefined ? minuteOf(next.time, past.at(-1)?.salon.hours) : undefined;
    return { first, last, by: booked ? 'booked' : 'next', time, next, rhythm: undefined };
  }
  const own = rhythm(past);
  const window = own && rhythmWindow(own);
  return window && { ...window, by: 'rhythm', time: undefined, next: undefined, rhythm: own };
};

/**
 * When a client is awaited after a day: for a visit noted ahead, else by what the visits up to the day promise, else by
 * her own rhythm; undefined where the notes give nothing to go by. `visits` are hers, oldest first.
 */
export const awaitedAfter = (visits: readonly VisitReckoned[], on: string): Awaited | undefined => {
  const ahead = visits.find(({ date }) => date > on);
  return ahead === undefined ? awaitedBy(visits) : notedFor(ahead);
};

/** As `awaitedAfter`, but a visit noted for the day itself is awaited, not past. */
export const awaitedOn = (visits: readonly VisitReckoned[], on: string): Awaited | undefined => {
  const noted = visits.find(({ date }) => date === on);
  return noted === undefined ? awaitedAfter(visits, on) : notedFor(noted);
};

/** The day that brings her back once more after another: by the same wait, or her rhythm; undefined without either. */
export const backAfter = ({ next, rhythm: own }: Awaited, date: string): string | undefined =>
  next?.wait === undefined ? own && rhythmWindow({ ...own, since: date })?.first : waitWindow(date, next.wait)?.first;
