import { pathAndLine } from '../journal/where.ts';
import { shelfMarkdown } from '../pages/shelf-page.ts';
import { chargedNotTaken } from '../reckon/stock/charged-goods.ts';
import { stockLedger } from '../reckon/stock/ledger.ts';
import { shelfState } from '../reckon/stock/shelf-state.ts';
import { ended, openReckoned } from './failed-clients.ts';
import { deliverReport, type FormOptions } from './pages-out.ts';
import { shelfRowJson } from './stock-json.ts';
import { dayOf } from './today.ts';

export type ShelfOptions = FormOptions & { readonly on?: string };

/** `bowlbook shelf`: what is on the shelf at the end of a day, how long it lasts, what no note explains. */
export const shelf = async (paths: readonly string[], options: ShelfOptions): Promise<number> => {
  const on = dayOf(options.on);
  const { journal, unreadable, all, faults } = openReckoned(paths);
  const reckoned = [...all.values()].flat();
  const ledger = stockLedger(journal, reckoned, on);
  const rows = shelfState(ledger, on);
  const charged = chargedNotTaken(journal, reckoned, rows, on);
  await deliverReport(
    {
      title: `The shelf, ${on}`,
      markdown: () => shelfMarkdown(journal, ledger, rows, { on, charged }),
      json: () => ({
        on,
        shelf: rows.map((row) => shelfRowJson(journal, row)),
        chargedNotTaken: charged.map(({ item, client, date, place }) => ({
          product: item.name,
          client,
          date,
          line: pathAndLine(journal, place),
        })),
        leftOut: ledger.unmoved.map(({ place, ...one }) => ({ ...one, line: pathAndLine(journal, place) })),
      }),
      csv: async () => (await import('../exchange/stock-csv.ts')).shelfCsv(rows),
      faults,
    },
    options,
  );
  return ended({ faults, unreadable });
};
