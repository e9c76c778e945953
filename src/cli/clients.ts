import { clientRows, clientsMarkdown } from '../pages/clients-page.ts';
import { ended, openReckoned } from './failed-clients.ts';
import { deliverReport, type FormOptions } from './pages-out.ts';
import { shownClients, withClients, withoutClients } from './shown.ts';
import { dayOf } from './today.ts';

export type ClientsOptions = Omit<FormOptions, 'csv'> & { readonly on?: string };

/** `bowlbook clients`: every client with her last visit, when the next is due, and how many alerts her card has. */
export const clients = async (paths: readonly string[], options: ClientsOptions): Promise<number> => {
  const on = dayOf(options.on);
  const { journal: whole, unreadable, shown, all, judged } = openReckoned(paths, on);
  const { findings, faults = [] } = judged.all();
  const journal = withoutClients(withClients(whole, shownClients(whole, shown)), faults);
  const rows = clientRows(journal, all, findings, on);
  await deliverReport(
    {
      title: `Clients, ${on}`,
      markdown: () => clientsMarkdown(journal, rows, on),
      json: () => ({ on, clients: rows }),
      faults,
    },
    options,
  );
  return ended({ faults, unreadable });
};
