import { clientRows, clientsMarkdown } from '../pages/clients-page.ts';
import { reckonAll } from '../reckon/visit.ts';
import { findAll } from '../rules/run.ts';
import { openJournal } from './open-journal.ts';
import { deliverReport, type FormOptions } from './pages-out.ts';
import { shownClients, withClients } from './shown.ts';
import { dayOf } from './today.ts';

export type ClientsOptions = Omit<FormOptions, 'csv'> & { readonly on?: string };

/** `bowlbook clients`: every client with her last visit, when the next is due, and how many alerts her card has. */
export const clients = async (paths: readonly string[], options: ClientsOptions): Promise<number> => {
  const on = dayOf(options.on);
  const { journal: whole, unreadable, shown } = openJournal(paths);
  const all = reckonAll(whole);
  const { findings } = findAll(whole, all, on);
  const journal = withClients(whole, shownClients(whole, shown));
  const rows = clientRows(journal, all, findings, on);
  await deliverReport(
    {
      title: `Clients, ${on}`,
      markdown: () => clientsMarkdown(journal, rows, on),
      json: () => ({ on, clients: rows }),
    },
    options,
  );
  return unreadable.length > 0 ? 2 : 0;
};
