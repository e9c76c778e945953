import { usageMarkdown } from '../pages/usage-page.ts';
import { type Correction, corrections } from '../reckon/money/corrections.ts';
import { usage as usageOf } from '../reckon/use/period.ts';
import { USAGE_BY, usageBy } from '../reckon/use/usage-by.ts';
import { ended, openReckoned } from './failed-clients.ts';
import { groupingOf } from './grouping.ts';
import { deliverReport, type FormOptions } from './pages-out.ts';
import { type PeriodOptions, periodOf } from './period-of.ts';
import { shownVisits } from './shown.ts';

export type UsageOptions = FormOptions & PeriodOptions & { readonly by?: string };

const correctionJson = ({ visit, kind, of, ofStylist, mixed, cost }: Correction): object => ({
  date: visit.date,
  client: visit.client.name,
  stylist: visit.visit.entry.by?.name,
  kind,
  of,
  ofStylist,
  mixed,
  cost,
  charged: visit.money.charged,
});

/** `bowlbook usage`: what was mixed, used and left in a period, and what was put right. */
export const usage = async (paths: readonly string[], options: UsageOptions): Promise<number> => {
  const period = periodOf(options);
  const by = groupingOf(options.by, USAGE_BY);
  const { journal, unreadable, shown, all, faults } = openReckoned(paths);
  const { shelf } = journal;
  const reckoned = shownVisits(journal, [...all.values()].flat(), shown);
  await deliverReport(
    {
      title: `Products, ${period.from} to ${period.to}`,
      markdown: (sheet) => usageMarkdown(journal, reckoned, period, { ...(by && { by }), sheet }),
      json: () =>
        by === undefined
          ? {
              ...period,
              usage: usageOf(reckoned, period, shelf),
              months: usageBy(reckoned, period, shelf, 'month'),
              corrections: corrections(reckoned, period).map(correctionJson),
            }
          : { ...period, by, usage: usageBy(reckoned, period, shelf, by) },
      csv: async () => {
        const one = by ?? 'shade';
        return (await import('../exchange/usage-csv.ts')).usageCsv(journal, one, usageBy(reckoned, period, shelf, one));
      },
      faults,
    },
    options,
  );
  return ended({ faults, unreadable });
};
