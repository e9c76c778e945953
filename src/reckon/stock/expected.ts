import type { ClientFile } from '../../journal/journal.ts';
import { div, type Exact, mul, ONE, sign } from '../../text/exact.ts';
import { type Awaited, awaitedAfter, backAfter, notedFor } from '../ahead/awaited.ts';
import { type DueWindow, dayAwaited, standingOn } from '../ahead/due-window.ts';
import { planVisit } from '../ahead/plan.ts';
import { needsBefore, type SalonMix, salonMix } from '../forecast/forecast.ts';
import type { VisitReckoned } from '../model.ts';
import { type Touch, touchesOf } from './touch.ts';

/** A client who is booked, due or overdue, and what she is likely to take off the shelf. */
export type Expected = DueWindow &
  Pick<Awaited, 'time'> & {
    readonly client: ClientFile;
    readonly why: 'booked' | 'due' | 'overdue';
    /** How often within the time ahead; nought for somebody whose day is too long past to be counted on. */
    readonly times: number;
    readonly takes: readonly Touch[];
  };

/** Days past her last after which somebody is no longer counted on: eight weeks. A choice, no source. */
const GIVEN_UP = 56;

type Shelf = Parameters<typeof touchesOf>[0];

/** What orders are reckoned from. */
type Ordering = { readonly shelf: Shelf; readonly salon: SalonMix; readonly on: string; readonly until: string };

/** What a visit took, its bowls as they are planned for the day. */
const takesAgain = (
  { shelf, salon }: Ordering,
  like: VisitReckoned,
  visits: readonly VisitReckoned[],
  day: string,
): readonly Touch[] => {
  const shares = new Map<string, Exact>();
  for (const { mixes, mixed, total } of planVisit(like, visits, day, salon).bowls)
    if (mixed !== undefined && total !== undefined && sign(mixed) > 0)
      for (const name of mixes) shares.set(name, div(total, mixed));
  return touchesOf(shelf, like).map((touch) => ({
    ...touch,
    amount: touch.amount && mul(touch.amount, shares.get(touch.bowl ?? '') ?? ONE),
  }));
};

/** How often somebody comes until a day: one overdue on the first day, and again after her own wait. */
const timesUntil = (awaited: Awaited, on: string, until: string): number => {
  let times = 0;
  let date: string | undefined = dayAwaited(awaited, on);
  while (date !== undefined && date <= until) {
    times += 1;
    date = backAfter(awaited, date);
  }
  return times;
};

const expectedOf = (ordering: Ordering, visits: readonly VisitReckoned[]): Expected[] => {
  const { shelf, on, until } = ordering;
  const [one] = visits;
  if (one === undefined) return [];
  const { client } = one;
  const like = visits.findLast(({ date, uses }) => date <= on && uses.length > 0);
  const ahead = visits.filter(({ date }) => date > on);
  const found = awaitedAfter(visits, on);
  const all: { readonly awaited: Awaited; readonly noted?: VisitReckoned }[] =
    ahead.length > 0 ? ahead.map((noted) => ({ awaited: notedFor(noted), noted })) : found ? [{ awaited: found }] : [];
  return all.flatMap(({ awaited, noted }): Expected[] => {
    const { first, last, time, by } = awaited;
    const { status, late } = standingOn(awaited, on);
    if (first > until || status === 'away') return [];
    const takes =
      noted !== undefined && noted.uses.length > 0
        ? touchesOf(shelf, noted)
        : like === undefined
          ? []
          : takesAgain(ordering, like, visits, dayAwaited(awaited, on));
    const why = status === 'overdue' ? 'overdue' : by === 'booked' ? 'booked' : 'due';
    const times = noted !== undefined ? 1 : late > GIVEN_UP ? 0 : timesUntil(awaited, on, until);
    return [{ client, first, last, time, why, times, takes }];
  });
};

/**
 * Who comes from the day on until another, both counted: those who are due or overdue then, by the same days, and each
 * visit that is noted ahead.
 */
export const expectedVisits = (
  shelf: Shelf,
  all: ReadonlyMap<string, readonly VisitReckoned[]>,
  on: string,
  until: string,
): Expected[] => {
  const ordering = { shelf, salon: salonMix(needsBefore(all, on)), on, until };
  return [...all.values()].flatMap((visits) => expectedOf(ordering, visits));
};
