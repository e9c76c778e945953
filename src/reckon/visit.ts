import type { ClientFile, Journal } from '../journal/journal.ts';
import type { Stood } from '../journal/source.ts';
import type { Visit } from '../records/schema/entry.ts';
import { type BowlMemo, reckonBowls, usesOf } from './bowl/bowls.ts';
import { looseUses } from './bowl/loose.ts';
import { ageOf } from './client/age.ts';
import { type GrowthLearnt, nothingLearnt, reckonHistory } from './client/history.ts';
import { reactedAt, reactedBy } from './client/reactions.ts';
import { reckonClock } from './clock/clock.ts';
import { lightenedAt, lightenedBy } from './lightenings.ts';
import type { VisitReckoned } from './model.ts';
import { reckonMoney } from './money/money.ts';
import { salonOf } from './salon-of.ts';

/**
 * One visit with everything worked out, and all visits of a client or a journal.
 *
 * Reads: the joined journal. Gives: reckoned visits, oldest first. Runs again: when the visit, an earlier one of the
 * client, the shelf or the salon changes.
 */

const NONE: VisitReckoned['reacted'] = [];

/**
 * Works out one visit; `earlier` are the client's visits before it, reckoned, oldest first, and `learnt` what those taught
 * of her growth.
 */
export const reckonVisit = (
  journal: Journal,
  client: ClientFile,
  visit: Stood<Visit>,
  earlier: readonly VisitReckoned[],
  memo?: BowlMemo,
  learnt: GrowthLearnt = nothingLearnt(),
): VisitReckoned => {
  const salon = salonOf(journal, visit);
  const date = visit.entry.date?.date ?? '';
  const bowls = reckonBowls(journal, salon, client, visit, memo);
  const loose = looseUses(journal.shelf, salon, visit);
  const { daysSinceColour, daysSinceRoots, growth } = reckonHistory(client, visit, date, earlier, salon, learnt);
  const clock = reckonClock(visit, salon);
  return {
    visit,
    client,
    salon,
    date,
    age: ageOf(client, date),
    bowls,
    clock,
    money: reckonMoney(visit, bowls, salon, loose),
    uses: usesOf(bowls, loose),
    daysSinceColour,
    daysSinceRoots,
    growth,
    reacted: reactedBy(earlier.at(-1)?.reacted ?? NONE, reactedAt(visit, { bowls, salon })),
    lightenings: lightenedBy(earlier.at(-1)?.lightenings ?? [], lightenedAt({ visit, clock, bowls, date })),
  };
};

/** A client's visits worked out, oldest first. */
export const reckonClient = (journal: Journal, client: ClientFile, memo: BowlMemo = new Map()): VisitReckoned[] => {
  const reckoned: VisitReckoned[] = [];
  const learnt = nothingLearnt();
  for (const visit of client.visits) reckoned.push(reckonVisit(journal, client, visit, reckoned, memo, learnt));
  return reckoned;
};

/** Every client's visits worked out, by the client's name. Throws the fault at the first that cannot be. */
export const reckonAll = (journal: Journal, memo: BowlMemo = new Map()): Map<string, VisitReckoned[]> =>
  new Map([...journal.clients].map(([name, client]) => [name, reckonClient(journal, client, memo)]));
