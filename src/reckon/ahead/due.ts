import type { ClientFile } from '../../journal/journal.ts';
import { addDays, daysBetween } from '../../text/dates.ts';
import { compareText } from '../../text/fold.ts';
import { type HoldInForce, holdsOn } from '../client/holds.ts';
import { leaveSince } from '../client/letters.ts';
import { productsToTest, putsOnColour } from '../head/services.ts';
import type { VisitReckoned } from '../model.ts';
import { type SkinTestStanding, skinTestOn } from '../testing/skin-test.ts';
import { testsFor } from '../testing/tests.ts';
import { type Awaited, awaitedAfter } from './awaited.ts';
import { AWAY_DAYS, dayAwaited, type Standing, standingOn } from './due-window.ts';

/**
 * Who is due or overdue, and whose skin test will not hold by then.
 *
 * Reads: the clients' reckoned visits, and a day. Gives: a due visit a client. Runs again: when a client or the day
 * changes.
 */

/** A client who is awaited. */
export type Due = Awaited &
  Standing & {
    readonly client: ClientFile;
    /** Her last visit up to the day. */
    readonly lastVisit: string;
    /** The day that tests and holds are looked up for: her first day, or the day asked for when that is past. */
    readonly awaited: string;
    /** The products she had the last time that ask for a skin test, as its tests stand on the day awaited. */
    readonly tests: readonly TestDue[];
    readonly holds: readonly HoldInForce[];
  };

/** How a test stands, and by when it has to be made. */
export type TestDue = {
  readonly standing: SkinTestStanding;
  /** Whether one is to be made, or read, before the visit. */
  readonly renew: boolean;
  /** The last day on which a test made then is old enough for the first day awaited. */
  readonly makeBy: string;
};

/** What `due` comes to. */
export type DueList = {
  readonly due: readonly Due[];
  /** Seen within the year before, with neither a `next` nor a rhythm. */
  readonly unknown: readonly { readonly client: ClientFile; readonly lastVisit: string }[];
};

const MINUTES = 1440;

const HOLDS: ReadonlySet<SkinTestStanding['status']> = new Set(['valid', 'not-needed']);

const testsOf = (
  like: VisitReckoned | undefined,
  reacted: VisitReckoned['reacted'],
  on: string,
  awaited: string,
): TestDue[] => {
  if (like === undefined) return [];
  const { client, salon } = like;
  const tests = testsFor(client, salon.hours, on);
  const standings = skinTestOn(
    { date: awaited, minute: undefined },
    productsToTest(like),
    tests,
    salon,
    reacted.filter(({ dye }) => dye),
    (from) => leaveSince(client, from, on) !== undefined,
  );
  return standings.map((standing) => {
    const back = -Math.ceil(standing.lead / MINUTES);
    return { standing, renew: !HOLDS.has(standing.status), makeBy: addDays(awaited, back) };
  });
};

const dueOf = (visits: readonly VisitReckoned[], on: string, until: string): Due | 'unknown' | undefined => {
  const past = visits.filter(({ date }) => date <= on);
  const last = past.at(-1);
  const ahead = visits.find(({ date }) => date > on);
  const found = awaitedAfter(visits, on);
  if (found === undefined)
    return last !== undefined && daysBetween(last.date, on) <= 2 * AWAY_DAYS ? 'unknown' : undefined;
  const { client } = (last ?? ahead) as VisitReckoned;
  if (found.first > until) return undefined;
  const awaited = dayAwaited(found, on);
  const like = ahead !== undefined && ahead.bowls.length > 0 ? ahead : past.findLast(putsOnColour);
  return {
    ...found,
    ...standingOn(found, on),
    client,
    lastVisit: last?.date ?? '',
    awaited,
    tests: testsOf(like, past.at(-1)?.reacted ?? [], on, awaited),
    holds: holdsOn(
      awaited,
      client,
      past.map(({ visit }) => visit),
    ),
  };
};

const order = (a: Due, b: Due): number => compareText(a.first, b.first) || compareText(a.client.name, b.client.name);

/** Who is due from the day on until another, both counted, and who is overdue; by the first day awaited, then by name. */
export const dueClients = (all: ReadonlyMap<string, readonly VisitReckoned[]>, on: string, until: string): DueList => {
  const due: Due[] = [];
  const unknown: { client: ClientFile; lastVisit: string }[] = [];
  for (const visits of all.values()) {
    const found = dueOf(visits, on, until);
    const last = visits.findLast(({ date }) => date <= on);
    if (found === 'unknown' && last !== undefined) unknown.push({ client: last.client, lastVisit: last.date });
    else if (found !== undefined && found !== 'unknown') due.push(found);
  }
  return { due: due.sort(order), unknown };
};
