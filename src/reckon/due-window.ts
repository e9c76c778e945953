import type { Duration } from '../records/schema/values.ts';
import type { Next } from '../records/schema/visit.ts';
import { addDays, addMonths, daysBetween, monthEnd } from '../text/dates.ts';
import type { VisitReckoned } from './model.ts';
import { putsOnColour, reachesRoots } from './services.ts';

/**
 * The days between which a client is awaited, read in this one place: by the `next` line of a visit, or by her own
 * rhythm.
 */

/** The days between which somebody is awaited; without a last day nothing says how late is late. */
export type DueWindow = { readonly first: string; readonly last: string | undefined };

/** The last `next` line of a visit as it stands in the notes. */
export const nextIn = ({ entry }: VisitReckoned['visit']): Next | undefined =>
  entry.facts.findLast((fact): fact is Next => fact.word === 'next');

/** The last `next` line of a visit. */
export const nextOf = ({ visit }: VisitReckoned): Next | undefined => nextIn(visit);

const DAYS = { min: 0, h: 0, d: 1, w: 7 } as const;

const later = (date: string, value: number, unit: Duration['unit']): string =>
  unit === 'mo' ? addMonths(date, Math.floor(value)) : addDays(date, Math.round(value * DAYS[unit]));

/** The days that a wait of `9w` or `6-8w` from a day comes to; undefined for one that ends on the day itself. */
export const waitWindow = (date: string, { value, to, unit }: Duration): DueWindow | undefined => {
  const [near, far] = [later(date, value, unit), later(date, to ?? value, unit)];
  return near > date ? { first: near, last: far } : undefined;
};

/** What a `next` line awaits: `8w`, `6-8w`, `from DATE`, a month, or a day, which is booked. */
export type Promised = DueWindow & { readonly next: Next; readonly booked: boolean };

/** What one visit's `next` awaits; undefined where it gives no time. */
export const promisedBy = (visit: VisitReckoned): Promised | undefined => {
  const next = nextOf(visit);
  if (next?.date !== undefined) {
    const { date } = next.date;
    return { first: date, last: next.from ? undefined : date, next, booked: !next.from };
  }
  if (next?.month !== undefined) {
    const { when } = next.month;
    return { first: `${when}-01`, last: next.from ? undefined : monthEnd(when), next, booked: false };
  }
  const window = next?.wait && waitWindow(visit.date, next.wait);
  return next && window && { ...window, next, booked: false };
};

/**
 * What the notes promise for the next visit: the last visit’s `next`, or while no colour has gone on since, that of a
 * visit before it, if it is for a later day.
 */
export const promised = (visits: readonly VisitReckoned[]): Promised | undefined => {
  const last = visits.at(-1);
  for (const visit of visits.toReversed()) {
    const found = promisedBy(visit);
    if (found !== undefined) return last !== undefined && found.first > last.date ? found : undefined;
    // A visit of which nothing is noted yet may be the one that was awaited.
    if (putsOnColour(visit) || visit.visit.entry.facts.length === 0) return undefined;
  }
  return undefined;
};

/** The visit whose `next` line says what to do next: the last with one, while no colour has gone on since. */
export const plannedIn = (visits: readonly VisitReckoned[]): VisitReckoned | undefined => {
  const at = visits.findLastIndex((visit) => nextOf(visit) !== undefined);
  return visits.slice(at + 1).some(putsOnColour) ? undefined : visits[at];
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
