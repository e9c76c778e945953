import { orderMarkdown } from '../pages/order-page.ts';
import { expectedVisits } from '../reckon/stock/expected.ts';
import { stockLedger } from '../reckon/stock/ledger.ts';
import { orderRows } from '../reckon/stock/order.ts';
import { daysNoted, PACE_LEAST_DAYS, shelfState } from '../reckon/stock/shelf-state.ts';
import { addDays } from '../text/dates.ts';
import { ended, openReckoned } from './failed-clients.ts';
import { deliverReport, type FormOptions } from './pages-out.ts';
import { refusal } from './refusal.ts';
import { orderRowJson } from './stock-json.ts';
import { dayOf } from './today.ts';

export type OrderOptions = FormOptions & { readonly on?: string; readonly weeks?: string };

/** Weeks ahead when none are given. A choice, no source. */
const WEEKS = '4';

const weeksOf = (typed: string): number => {
  const weeks = Number(typed);
  if (!/^\d+$/.test(typed) || weeks < 1 || weeks > 104)
    throw refusal(`\`--weeks ${typed}\` is no number of weeks from 1 to 104.`, 'Write it as in `--weeks 6`.');
  return weeks;
};

/** `bowlbook order`: what to buy in whole packs for the weeks ahead. */
export const order = async (paths: readonly string[], options: OrderOptions): Promise<number> => {
  const on = dayOf(options.on);
  const until = addDays(on, 7 * weeksOf(options.weeks ?? WEEKS));
  const { journal, unreadable, all, faults } = openReckoned(paths);
  const ledger = stockLedger(journal, [...all.values()].flat(), on);
  const rows = shelfState(ledger, on);
  const noted = daysNoted(ledger, on);
  const expected = expectedVisits(journal.shelf, all, on, until);
  const toOrder = orderRows(rows, expected, on, until, noted >= PACE_LEAST_DAYS);
  await deliverReport(
    {
      title: `To order, ${on} to ${until}`,
      markdown: () => orderMarkdown(journal, toOrder, expected, { on, until, noted }),
      json: () => ({
        on,
        until,
        daysNoted: noted,
        order: toOrder.map(orderRowJson),
        awaited: expected.map(({ client, first, last, why, times }) => ({
          client: client.name,
          date: first,
          ...(last !== undefined && { last }),
          why,
          times,
        })),
      }),
      csv: async () => (await import('../exchange/stock-csv.ts')).orderCsv(toOrder),
      faults,
    },
    options,
  );
  return ended({ faults, unreadable });
};
