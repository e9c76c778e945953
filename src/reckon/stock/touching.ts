import type { Journal } from '../../journal/journal.ts';
import { type BowlMemo, reckonBowls } from '../bowls.ts';
import { salonOf } from '../salon-of.ts';
import type { TouchingVisit } from './touch.ts';

/** Every visit with its bowls and nothing else worked out: enough to say what touched whom. */
export const touchingVisits = function* (journal: Journal): Generator<TouchingVisit> {
  for (const client of journal.clients.values()) {
    // One a client: a bowl of somebody else that is made again is worked out once more, and memory stays small.
    const memo: BowlMemo = new Map();
    for (const visit of client.visits) {
      const salon = salonOf(journal, visit);
      yield { visit, client, salon, bowls: reckonBowls(journal, salon, client, visit, memo) };
    }
  }
};
