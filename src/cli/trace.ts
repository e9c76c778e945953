import { existsSync } from 'node:fs';
import type { Journal } from '../journal/journal.ts';
import { clientTraceMarkdown, lotMarkdown } from '../pages/trace-page.ts';
import type { ClientFault } from '../reckon/client-fault.ts';
import { touchingVisits } from '../reckon/stock/touching.ts';
import { type Traceable, traceable, traceClient, traceLot } from '../reckon/stock/trace.ts';
import { ended, failAt } from './failed-clients.ts';
import { findClient } from './find-client.ts';
import { openJournal } from './open-journal.ts';
import { deliverReport, type FormOptions } from './pages-out.ts';
import { refusal } from './refusal.ts';
import { touchJson } from './stock-json.ts';

export type TraceOptions = FormOptions & { readonly client?: string };

/** All that can be traced in a journal, and the clients at whose notes the program failed. */
const traceableIn = (journal: Journal): { readonly traced: Traceable; readonly faults: readonly ClientFault[] } => {
  const faults: ClientFault[] = [];
  const traced = traceable(
    journal,
    touchingVisits(journal, (fault) => faults.push(fault)),
  );
  return { traced, faults };
};

/** Where a lot went. */
const ofLot = async (lot: string, paths: readonly string[], options: TraceOptions): Promise<number> => {
  const { journal, unreadable } = openJournal(paths);
  const { traced, faults } = traceableIn(journal);
  const trace = traceLot(traced, lot);
  await deliverReport(
    {
      title: `Lot ${lot}`,
      markdown: () => lotMarkdown(journal, trace),
      json: () => ({
        lot,
        wares: trace.wares.map(({ item, shade, arrived, gone }) => ({ product: item.name, shade, arrived, gone })),
        near: trace.near,
        touched: trace.traced.map(({ touch, certainty }) => ({ ...touchJson(journal, touch), certainty })),
      }),
      csv: async () => (await import('../exchange/stock-csv.ts')).lotCsv(journal, trace),
      faults,
    },
    options,
  );
  return ended({ faults, unreadable }, trace.wares.length === 0 ? 1 : 0);
};

/** What touched a client. */
const ofClient = async (name: string, paths: readonly string[], options: TraceOptions): Promise<number> => {
  const { journal, unreadable } = openJournal(paths);
  const client = findClient(journal, name);
  const { traced, faults } = traceableIn(journal);
  failAt(client.name, faults);
  const touches = traceClient(traced, client);
  await deliverReport(
    {
      title: `Lots, ${client.full}`,
      markdown: () => clientTraceMarkdown(journal, client, touches),
      json: () => ({
        client: client.name,
        touched: touches.map(({ touch, recorded, possible }) => ({ ...touchJson(journal, touch), recorded, possible })),
      }),
      csv: async () => (await import('../exchange/stock-csv.ts')).clientTraceCsv(journal, touches),
      faults,
    },
    options,
  );
  return ended({ faults, unreadable });
};

/**
 * `bowlbook trace`: every client and date that a lot touched, or with `--client` every lot that touched her. Exit code 1
 * when nothing in the notes names the lot.
 */
export const trace = (lot: string | undefined, paths: readonly string[], options: TraceOptions): Promise<number> => {
  if (options.client !== undefined)
    return ofClient(options.client, lot === undefined ? paths : [lot, ...paths], options);
  if (lot === undefined)
    throw refusal('`trace` needs a lot, or `--client NAME`.', 'Write it as in `bowlbook trace K2231 journals/salon`.');
  if (paths.length === 0 && existsSync(lot) && lot.includes('/'))
    throw refusal(`\`${lot}\` is a path, and the lot comes first.`, `Write it as in \`bowlbook trace K2231 ${lot}\`.`);
  return ofLot(lot, paths, options);
};
