import { dueMarkdown } from '../pages/due-page.ts';
import { isGrounded } from '../pages/unfound.ts';
import { type Due, type DueList, dueClients } from '../reckon/ahead/due.ts';
import { type Lapsing, lapsingTests } from '../reckon/ahead/lapsing.ts';
import { addDays, clockText } from '../text/dates.ts';
import { ended, openReckoned } from './failed-clients.ts';
import { deliver } from './output.ts';
import { deliverReport, type FormOptions } from './pages-out.ts';
import { refusal } from './refusal.ts';
import { shownClients, withClients, withoutClients } from './shown.ts';
import { dayOf } from './today.ts';

export type DueOptions = FormOptions & { readonly on?: string; readonly weeks?: string; readonly ics?: true };

/** Weeks ahead when none are given. A choice, no source. */
const WEEKS = '4';

const weeksOf = (typed: string): number => {
  const weeks = Number(typed);
  if (!/^\d+$/.test(typed) || weeks < 1 || weeks > 104)
    throw refusal(`\`--weeks ${typed}\` is no number of weeks from 1 to 104.`, 'Write it as in `--weeks 6`.');
  return weeks;
};

const lapsingJson = ({ client, products, last, test }: Lapsing): object => ({
  client: client.name,
  name: client.full,
  products,
  until: last,
  made: test?.made?.date,
  read: test?.read?.date,
});

const dueJson = ({ client, next, tests, holds, time, rhythm, ...one }: Due): object => ({
  client: client.name,
  name: client.full,
  ...one,
  ...(time !== undefined && { time: clockText(time) }),
  ...(rhythm && { rhythm }),
  ...(next && { noted: next.changes.map(({ text }) => text), says: next.says?.text }),
  holds: holds.map(({ what, from, until, says }) => ({ what, from, until, says })),
  tests: tests.map(({ standing, renew, makeBy }) => ({
    product: standing.product,
    stands: standing.status,
    made: standing.test?.made?.date,
    until: standing.last,
    renew,
    makeBy,
  })),
});

const listJson = ({ due, unknown, lapsing }: DueList & { readonly lapsing: readonly Lapsing[] }): object => ({
  due: due.map(dueJson),
  lapsingTests: lapsing.map(lapsingJson),
  nothingToGoBy: unknown.map(({ client, lastVisit }) => ({ client: client.name, lastVisit })),
});

/** `bowlbook due`: who is due or overdue in the weeks ahead, and whose skin test will not hold by then. */
export const due = async (paths: readonly string[], options: DueOptions): Promise<number> => {
  const on = dayOf(options.on);
  const until = addDays(on, 7 * weeksOf(options.weeks ?? WEEKS));
  const { journal: whole, unreadable, shown, all: each, faults } = openReckoned(paths);
  const names = shownClients(whole, shown);
  const journal = withoutClients(withClients(whole, names), faults);
  const all = new Map([...each].filter(([name]) => names.has(name)));
  const list = {
    ...dueClients(all, on, until),
    lapsing: isGrounded(journal) ? lapsingTests(journal, all, on, until) : [],
  };
  if (options.ics) {
    const { dueCalendar } = await import('../exchange/due-calendar.ts');
    deliver(dueCalendar(list.due, list.lapsing, on), options.output);
  } else
    await deliverReport(
      {
        title: `Who is due, ${on} to ${until}`,
        markdown: () => dueMarkdown(journal, list, { on, until }),
        json: () => ({ on, until, ...listJson(list) }),
        csv: async () => (await import('../exchange/due-calendar.ts')).dueCsv(list.due),
        faults,
      },
      options,
    );
  return ended({ faults, unreadable });
};
