import type { Duration } from '../../records/schema/values.ts';
import type { Next } from '../../records/schema/visit.ts';
import { addLength, daysBetween, monthEnd } from '../../text/dates.ts';
import { putsOnColour, reachesRoots } from '../head/services.ts';
import type { VisitReckoned } from '../model.ts';

/**
 * The days between which a client is awaited, read in this one place: by the `next` line of a visit, or by her own
 * rhythm.
 */

/** The days between which somebody is awaited; without a last day nothing says how late is late. */
export type DueWindow = { readonly first: string; readonly last: string | undefined };

/** The days that a wait of `9w` or `6-8w` from a day comes to; undefined for one that ends on the day itself. */
export const waitWindow = (date: string, { value, to, unit }: Duration): DueWindow | undefined => {
  const [near, far] = [addLength(date, value, unit), addLength(date, to ?? value, unit)];
  return near > date ? { first: near, last: far } : undefined;
};

/** What a `next` line awaits: `8w`, `6-8w`, `from DATE`, a month, or a day, which is booked. */
export type Promised = DueWindow & { readonly next: Next; readonly booked: boolean };

/** What one `next` line awaits, of a visit on a day; undefined where it gives no time. */
const awaitedIn = (next: Next, day: string): Promised | undefined => {
  if (next.date !== undefined) {
    const { date } = next.date;
    return { first: date, last: next.from ? undefined : date, next, booked: !next.from };
  }
  if (next.month !== undefined) {
    const { when } = next.month;
    return { first: `${when}-01`, last: next.from ? undefined : monthEnd(when), next, booked: false };
  }
  const window = next.wait && waitWindow(day, next.wait);
  return window && { ...window, next, booked: false };
};

/** The `next` lines of a visit, in order. */
export const nextLines = ({ entry }: VisitReckoned['visit']): readonly Next[] =>
  entry.facts.filter((fact): fact is Next => fact.word === 'next');

const saidBy = (lines: readonly Next[]): Next['says'] => {
  const said = lines.flatMap(({ says }) => says ?? []);
  const [first] = said;
  return first && { text: said.map(({ text }) => text).join('; '), at: first.at };
};

/** The line that brings her back first; of lines for one day the one that books it. */
const soonest = (lines: readonly Next[], day: string): Next | undefined =>
  lines
    .flatMap((line) => awaitedIn(line, day) ?? [])
    .reduce<Promised | undefined>(
      (first, one) => (first === undefined || one.first < first.first ? one : first),
      undefined,
    )?.next;

/**
 * The `next` lines of a visit as one: the time that brings her back first, and what that line and those without a time
 * of their own ask for. What is asked for at a later time stays in its line.
 */
export const nextIn = (visit: VisitReckoned['visit']): Next | undefined => {
  const lines = nextLines(visit);
  const [first, second] = lines;
  if (first === undefined || second === undefined) return first;
  const day = visit.entry.date?.date;
  const timed = day === undefined ? undefined : soonest(lines, day);
  const { says: _, ...base } = timed ?? first;
  const own = lines.filter(
    (line) => line === timed || (line.wait === undefined && line.date === undefined && line.month === undefined),
  );
  const says = saidBy(own);
  return { ...base, changes: own.flatMap(({ changes }) => changes), ...(says && { says }) };
};

/** The `next` lines of a visit as one. */
export const nextOf = ({ visit }: VisitReckoned): Next | undefined => nextIn(visit);

/** What one visit's `next` awaits; undefined where it gives no time. */
export const promisedBy = (visit: VisitReckoned): Promised | undefined => {
  const next = nextOf(visit);
  return next && awaitedIn(next, visit.date);
};

/** Whether a visit only puts an earlier one right, so that what was planned then still stands. */
const isRedo = ({ visit }: VisitReckoned): boolean => visit.entry.facts.some(({ word }) => word === 'redo');

/**
 * What the notes promise for the next visit: the last visit’s `next`, or while no colour has gone on since, that of a
 * visit before it, if it is for a later day. A redo that promises nothing leaves the promise of before.
 */
export const promised = (visits: readonly VisitReckoned[]): Promised | undefined => {
  const last = visits.at(-1);
  for (const visit of visits.toReversed()) {
    const found = promisedBy(visit);
    if (found !== undefined) return last !== undefined && found.first > last.date ? found : undefined;
    // A visit of which nothing is noted yet may be the one that was awaited.
    if ((putsOnColour(visit) && !isRedo(visit)) || visit.visit.entry.facts.length === 0) return undefined;
  }
  return undefined;
};

/** The visit whose `next` line says what to do next: the last with one, while no colour has gone on since but a redo’s. */
export const plannedIn = (visits: readonly VisitReckoned[]): VisitReckoned | undefined => {
  const at = visits.findLastIndex((visit) => nextOf(visit) !== undefined);
  return visits.slice(at + 1).some((visit) => putsOnColour(visit) && !isRedo(visit)) ? undefined : visits[at];
};

/** Days within which visits are one service: a toner or a correction soon after. A choice, no source. */
const ONE_SERVICE = 14;

/** Intervals that a rhythm is read from: the latest six, and no fewer than two. A choice, no source. */
const LATEST = 6;
const LEAST = 2;

/** How many days lie between her services, and since when the next counts. */
export type Rhythm = { readonly days: number; readonly service: 'roots' | 'colour'; readonly since: string };

const rhythmOf = (dates: readonly string[], service: Rhythm['service']): Rhythm | undefined => {
  const intervals = dates
    .slice(1)
    .map((date, index) => daysBetween(dates[index] as string, date))
    .filter((days) => days >= ONE_SERVICE)
    .slice(-LATEST)
    .sort((a, b) => a - b);
  const since = dates.at(-1);
  const [low, high] = [intervals[(intervals.length - 1) >> 1], intervals[intervals.length >> 1]];
  if (since === undefined || low === undefined || high === undefined || intervals.length < LEAST) return undefined;
  return { days: Math.round((low + high) / 2), service, since };
};

/** When a rhythm brings her back; undefined past the calendar's end. */
export const rhythmWindow = ({ since, days }: Rhythm): DueWindow | undefined =>
  waitWindow(since, { value: days, unit: 'd', at: 0 });

const datesOf = (visits: readonly VisitReckoned[], does: (visit: VisitReckoned) => boolean): string[] =>
  visits.filter(does).map(({ date }) => date);

/**
 * Her own rhythm: the median of the days between root services, while it brings her back after her last visit; else
 * between services that put on colour.
 */
export const rhythm = (visits: readonly VisitReckoned[]): Rhythm | undefined => {
  const roots = rhythmOf(datesOf(visits, reachesRoots), 'roots');
  const back = roots && rhythmWindow(roots);
  const last = visits.at(-1);
  if (back !== undefined && last !== undefined && back.first > last.date) return roots;
  return rhythmOf(datesOf(visits, putsOnColour), 'colour');
};

/** The day to prepare for: the first awaited, or the day asked for when that is past. */
export const dayAwaited = ({ first }: DueWindow, on: string): string => (first < on ? on : first);

/** Days after which somebody overdue counts as away: half a year. A choice, no source. */
export const AWAY_DAYS = 182;

/** How a day stands to a window. */
export type Standing = {
  readonly status: 'overdue' | 'due' | 'away';
  /** Days past the last day, or past the first where there is no last; nought while that is to come. */
  readonly late: number;
};

/** Whether somebody awaited between two days is due, overdue or away on a day. */
export const standingOn = ({ first, last }: DueWindow, on: string): Standing => {
  const late = Math.max(0, daysBetween(last ?? first, on));
  return { status: late > AWAY_DAYS ? 'away' : late > 0 && last !== undefined ? 'overdue' : 'due', late };
};
