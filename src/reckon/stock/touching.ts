import type { Journal } from '../../journal/journal.ts';
import { type BowlMemo, letGo, reckonBowls } from '../bowl/bowls.ts';
import { type ClientFault, withinClient } from '../client-fault.ts';
import { salonOf } from '../salon-of.ts';
import { type Touch, type TouchingVisit, touchesOf } from './touch.ts';

/**
 * Every visit with its bowls and nothing else worked out: enough to say what touched whom. `failed` gets each client whose
 * bowls could not be worked out, of whom there is none; without it the fault is thrown.
 */
export const touchingVisits = function* (
  journal: Journal,
  failed: (fault: ClientFault) => void = ({ fault }) => {
    throw fault;
  },
): Generator<TouchingVisit> {
  let memo: BowlMemo = new Map();
  for (const client of journal.clients.values()) {
    const visits = withinClient(client, () =>
      client.visits.map((visit) => {
        const salon = salonOf(journal, visit);
        return { visit, client, salon, bowls: reckonBowls(journal, salon, client, visit, memo) };
      }),
    );
    if ('fault' in visits) {
      failed(visits);
      // What was left half done is not trusted.
      memo = new Map();
    } else yield* visits;
    letGo(memo, client);
  }
};

/** Whether a visit says which salon it was in, by itself or by its stylist; with one salon there is nothing to say. */
const saysSalon = ({ salons, stylists }: Journal, { entry }: TouchingVisit['visit']): boolean =>
  salons.size < 2 ||
  salons.has(entry.salon?.name ?? '') ||
  salons.has(stylists.get(entry.by?.name ?? '')?.entry.salon?.name ?? '');

/** What touched the client at a visit, for a trace: where no note says which of several salons, it can be any. */
export const tracedTouches = (journal: Journal, visit: TouchingVisit): Touch[] => {
  const touches = touchesOf(journal.shelf, visit);
  return saysSalon(journal, visit.visit) ? touches : touches.map((touch) => ({ ...touch, salon: undefined }));
};
