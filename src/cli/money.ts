import { moneyMarkdown } from '../pages/money-page.ts';
import { type DepositHeld, depositsHeld } from '../reckon/money/deposits.ts';
import { marginOf, TAKINGS_BY, type Takings, type TakingsBy, takings, takingsBy } from '../reckon/money/takings.ts';
import { ended, openReckoned } from './failed-clients.ts';
import { groupingOf } from './grouping.ts';
import { deliverReport, type FormOptions } from './pages-out.ts';
import { type PeriodOptions, periodOf } from './period-of.ts';
import { shownVisits } from './shown.ts';

export type MoneyOptions = FormOptions & PeriodOptions & { readonly by?: string };

const rowJson = <Row extends Takings>(row: Row): object => ({ ...row, margin: marginOf(row) });

const depositJson = ({ client, ...held }: DepositHeld): object => ({ client: client.name, ...held });

/** `bowlbook money`: what was charged in a period, what its products cost, and what that leaves. */
export const money = async (paths: readonly string[], options: MoneyOptions): Promise<number> => {
  const period = periodOf(options);
  const by = groupingOf(options.by, TAKINGS_BY);
  const { journal, unreadable, shown, all, faults } = openReckoned(paths);
  const reckoned = shownVisits(journal, [...all.values()].flat(), shown);
  const held = depositsHeld(reckoned, period.to);
  const rows = (one: TakingsBy): object[] => takingsBy(reckoned, period, one).map(rowJson);
  await deliverReport(
    {
      title: `Money, ${period.from} to ${period.to}`,
      markdown: (sheet) => moneyMarkdown(journal, reckoned, held, period, { ...(by && { by }), sheet }),
      json: () => ({
        ...period,
        inAll: takings(reckoned, period).map(rowJson),
        ...Object.fromEntries((by === undefined ? TAKINGS_BY : [by]).map((one) => [one, rows(one)])),
        depositsHeld: held.map(depositJson),
      }),
      csv: async () => {
        const one = by ?? 'visit';
        return (await import('../exchange/money-csv.ts')).moneyCsv(journal, one, takingsBy(reckoned, period, one));
      },
      faults,
    },
    options,
  );
  return ended({ faults, unreadable });
};
