import type { Due, TestDue } from '../reckon/ahead/due.ts';
import type { Lapsing } from '../reckon/ahead/lapsing.ts';
import { sayWindow } from '../reckon/ahead/say-window.ts';
import { listed } from '../reckon/say.ts';
import { addDays, clockText } from '../text/dates.ts';
import { caution } from '../trade/cautions.ts';
import { type Cell, csvText } from './csv.ts';
import { calendarText, type DayEvent } from './icalendar.ts';

const BY = { booked: 'booked', next: 'by the last visit’s next line', rhythm: 'by her own rhythm' } as const;

/** What names the same awaited visit in every file: the client, and the visit it follows. */
const uidOf = ({ client, lastVisit, first }: Due, what: string): string =>
  `${client.name}-${lastVisit === '' ? first : lastVisit}-${what}@bowlbook`;

const visitEvent = (one: Due): DayEvent => {
  const { client, first, last, late, awaited, status, time, next, holds } = one;
  const asked = [...(next?.changes ?? []).map(({ text }) => text), ...(next?.says ? [next.says.text] : [])];
  const lines = [
    `Awaited ${sayWindow(one)}, ${BY[one.by]}.`,
    ...(asked.length === 0 ? [] : [`Noted for it: ${asked.join(', ')}`]),
    ...holds.map(({ what, until }) => `Hold: no ${what}${until === undefined ? '' : ` until ${until}`}.`),
  ];
  const word = time === undefined ? status : clockText(time);
  // One overdue stands on the day the file is made for: what is past is not looked at.
  const end = last === undefined || last < awaited ? awaited : last;
  return {
    uid: uidOf(one, 'due'),
    first: late > 0 ? awaited : first,
    dayAfter: addDays(end, 1),
    summary: `${client.full}: ${word}`,
    description: lines.join('\n'),
    category: 'Bowlbook due',
  };
};

const testEvent = (one: Due, tests: readonly TestDue[], on: string): DayEvent | undefined => {
  const [test] = tests;
  if (test === undefined) return undefined;
  const day = test.makeBy < on ? on : test.makeBy;
  const products = tests.map(({ standing }) => standing.product);
  const positive = tests.filter(({ standing }) => standing.status === 'positive');
  const stands = tests.map(({ standing }) => `${standing.product}: ${standing.status}`).join('\n');
  const hurt = positive.length > 0 || tests.some(({ standing }) => standing.status === 'void');
  return {
    uid: uidOf(one, 'skin-test'),
    first: day,
    dayAfter: addDays(day, 1),
    summary: `${one.client.full}: skin test ${positive.length > 0 ? 'POSITIVE' : 'to make or read'} (${listed(products)})`,
    description: `As it stands for ${one.awaited}:\n${stands}\n${caution(hurt ? 'reaction' : 'skin-test')}`,
    category: 'Bowlbook skin test',
  };
};

const lapsingEvent = ({ client, products, last }: Lapsing): DayEvent => ({
  uid: `${client.name}-${products[0] ?? 'all'}-${last}-skin-test-ends@bowlbook`,
  first: last,
  dayAfter: addDays(last, 1),
  summary: `${client.full}: skin test ends${products.length === 0 ? '' : ` (${listed(products)})`}`,
  description: caution('skin-test'),
  category: 'Bowlbook skin test',
});

/**
 * Who is due, whose skin test is to be made before then, and whose ends, as a calendar; those away for long are left out.
 */
export const dueCalendar = (due: readonly Due[], lapsing: readonly Lapsing[], on: string): string => {
  const here = due.filter(({ status }) => status !== 'away');
  const events = here.flatMap((one) => {
    const renew = one.tests.filter((test) => test.renew);
    return [visitEvent(one), testEvent(one, renew, on)].filter((event) => event !== undefined);
  });
  return calendarText([...events, ...lapsing.map(lapsingEvent)], on);
};

/** Who is due as comma-separated values, a record a client. */
export const dueCsv = (due: readonly Due[]): string =>
  csvText(
    ['client', 'full_name', 'status', 'by', 'first', 'last', 'time', 'days_late', 'last_visit', 'noted', 'tests'],
    due.map((one): Cell[] => [
      one.client.name,
      one.client.full,
      one.status,
      one.by,
      one.first,
      one.last,
      one.time === undefined ? undefined : clockText(one.time),
      one.late,
      one.lastVisit,
      one.next?.changes.map(({ text }) => text).join(', '),
      one.tests.map(({ standing }) => `${standing.product} ${standing.status}`).join(', '),
    ]),
  );
