import type { ClientFile, Journal } from '../journal/journal.ts';
import type { ClientFault } from '../reckon/client-fault.ts';
import type { VisitReckoned } from '../reckon/model.ts';
import type { Shown } from './open-journal.ts';

/** What of a journal is shown, where paths name a part of it. */

const isShown = ({ entries, visits }: ClientFile, { has }: Shown): boolean =>
  entries.some(({ file }) => has(file)) || visits.some(({ file }) => has(file));

/**
 * The clients whose entries or visits stand in what was named; all of them where it names none, as a file of the shelf
 * does.
 */
export const shownClients = ({ clients }: Journal, shown: Shown): ReadonlySet<string> => {
  const names = [...clients.keys()];
  if (shown.isAll) return new Set(names);
  const some = names.filter((name) => isShown(clients.get(name) as ClientFile, shown));
  return new Set(some.length === 0 ? names : some);
};

/** The journal with the clients alone that are shown; everything else is as it was. */
export const withClients = (journal: Journal, names: ReadonlySet<string>): Journal =>
  names.size === journal.clients.size
    ? journal
    : { ...journal, clients: new Map([...journal.clients].filter(([name]) => names.has(name))) };

/** The journal without the clients at whose notes the program failed; everything else is as it was. */
export const withoutClients = (journal: Journal, failed: readonly ClientFault[]): Journal => {
  const names = new Set(failed.map(({ client }) => client));
  return withClients(journal, new Set([...journal.clients.keys()].filter((name) => !names.has(name))));
};

/** Visits that stand in what was named; all of them where no visit of the journal does. */
export const shownVisits = (
  { clients }: Journal,
  visits: readonly VisitReckoned[],
  shown: Shown,
): readonly VisitReckoned[] => {
  const isNamed = [...clients.values()].some((client) => client.visits.some(({ file }) => shown.has(file)));
  return shown.isAll || !isNamed ? visits : visits.filter(({ visit }) => shown.has(visit.file));
};
