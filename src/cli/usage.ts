import { usageMarkdown } from '../pages/usage-page.ts';
import { usage as usageOf } from '../reckon/period.ts';
import { reckonAll } from '../reckon/visit.ts';
import { isDate, isMonth, monthEnd } from '../text/dates.ts';
import { openJournal } from './open-journal.ts';
import { deliver } from './output.ts';
import { plainJson } from './plain-json.ts';
import { refusal } from './refusal.ts';
import { dayOf } from './today.ts';

export type UsageOptions = {
  readonly from?: string;
  readonly to?: string;
  readonly html?: true;
  readonly json?: true;
  readonly output?: string;
  readonly on?: string;
};

/** A day, or the first or last day of a month or a year. Throws a refusal for anything else. */
const edgeOf = (option: 'from' | 'to', typed: string): string => {
  if (isDate(typed)) return typed;
  if (isMonth(typed)) return option === 'from' ? `${typed}-01` : monthEnd(typed);
  if (/^\d{4}$/.test(typed)) return option === 'from' ? `${typed}-01-01` : `${typed}-12-31`;
  throw refusal(
    `\`--${option} ${typed}\` is no day, month or year.`,
    `Write it as in \`--${option} 2026-09-04\`, \`--${option} 2026-09\` or \`--${option} 2026\`.`,
  );
};

const periodOf = ({ from, to, on }: UsageOptions): { from: string; to: string } => {
  const year = (to ?? from ?? dayOf(on)).slice(0, 4);
  const period = { from: edgeOf('from', from ?? year), to: edgeOf('to', to ?? year) };
  if (period.from > period.to)
    throw refusal(`The period ends on ${period.to}, before it begins on ${period.from}.`, 'Change `--from` or `--to`.');
  return period;
};

/** `bowlbook usage`: what was mixed, used and left in a period, as Markdown, as a page or as JSON. */
export const usage = async (paths: readonly string[], options: UsageOptions): Promise<number> => {
  const period = periodOf(options);
  const { journal, unreadable } = openJournal(paths);
  const reckoned = [...reckonAll(journal).values()].flat();
  const code = unreadable.length > 0 ? 2 : 0;
  if (options.json) {
    const value = { ...period, usage: plainJson(usageOf(reckoned, period, journal.shelf)) };
    deliver(JSON.stringify(value, undefined, 2), options.output);
    return code;
  }
  const markdown = usageMarkdown(journal, reckoned, period);
  if (!options.html) deliver(markdown, options.output);
  else {
    const { pageHtml } = await import('../pages/html.ts');
    deliver(pageHtml({ title: `Products, ${period.from} to ${period.to}`, markdown }), options.output);
  }
  return code;
};
