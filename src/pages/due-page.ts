import type { Journal } from '../journal/journal.ts';
import type { Due, DueList, TestDue } from '../reckon/ahead/due.ts';
import type { Lapsing } from '../reckon/ahead/lapsing.ts';
import { sayRhythm, sayWindow } from '../reckon/ahead/say-window.ts';
import { addDays } from '../text/dates.ts';
import { type CautionTopic, caution, FIRST } from '../trade/cautions.ts';
import { dayText, timeBetween } from './days.ts';
import { escapeText } from './escape.ts';
import { CAUTION_HEADING } from './headings.ts';
import { commas, joined, quote, spaced } from './noted.ts';
import { type Column, table } from './tables.ts';
import { unfoundBlocks } from './unfound.ts';

/**
 * Who is due, as Markdown: the overdue first, then those to come, whose skin test will not hold by then, and whose ends.
 */

const STANDS: Readonly<Record<TestDue['standing']['status'], string>> = {
  valid: 'holds',
  'not-needed': 'noted as not needed',
  missing: 'none on record',
  unread: 'not read',
  unclear: 'not settled by its reading',
  'too-soon': 'made too short a time before',
  'read-too-soon': 'read too short a time after',
  expired: 'past its time',
  positive: 'POSITIVE',
  void: 'void since a reaction',
};

/** How a test stands, with the last day on which one past its time held. */
const standsText = ({ status, last }: TestDue['standing']): string =>
  status === 'expired' && last !== undefined ? `past its time since ${addDays(last, 1)}` : STANDS[status];

const WHY = { booked: 'booked', next: '`next`', rhythm: '' } as const;

const whyText = ({ by, rhythm }: Due): string => (rhythm === undefined ? WHY[by] : sayRhythm(rhythm));

const askedText = ({ next, holds }: Due): string =>
  joined(
    [
      commas((next?.changes ?? []).map(({ text }) => escapeText(text))),
      next?.says && quote(next.says.text),
      ...holds.map(
        ({ what, until }) => `**hold: no ${escapeText(what)}${until === undefined ? '' : ` until ${until}`}**`,
      ),
    ],
    '; ',
  );

const lateText = ({ late, last, first, lastVisit }: Due): string =>
  late === 0 ? '' : timeBetween(last ?? first, addDays(last ?? first, late)) || lastVisit;

const dueTable = (due: readonly Due[]): string => {
  const late = due.some((one) => one.late > 0);
  const columns: Column[] = [
    { head: 'Client' },
    { head: 'Awaited' },
    ...(late ? [{ head: 'Past it by' }] : []),
    { head: 'By' },
    { head: 'Last visit' },
    { head: 'Noted for it' },
  ];
  return table(
    columns,
    due.map((one) => [
      escapeText(one.client.full),
      sayWindow(one),
      ...(late ? [lateText(one)] : []),
      whyText(one),
      one.lastVisit,
      askedText(one),
    ]),
  );
};

const madeText = ({ test }: Pick<TestDue['standing'], 'test'>): string =>
  spaced([test?.made?.date, test?.read === undefined ? undefined : `read ${test.read.date}`]);

const dueByText = ({ standing, makeBy }: TestDue, on: string): string => {
  if (standing.status === 'positive') return 'no colour of this product';
  return makeBy < on ? `now, and ${standing.lead / 60} h before the visit` : makeBy;
};

/** A client and one of her tests that does not hold on the day she is awaited. */
const renewals = (due: readonly Due[]): { readonly one: Due; readonly test: TestDue }[] =>
  due.flatMap((one) => one.tests.filter(({ renew }) => renew).map((test) => ({ one, test })));

const testsTable = (due: readonly Due[], on: string): string =>
  table(
    [
      { head: 'Client' },
      { head: 'Product' },
      { head: 'On the day' },
      { head: 'Stands then' },
      { head: 'Test' },
      { head: 'Make it by' },
    ],
    renewals(due).map(({ one, test }) => [
      escapeText(one.client.full),
      escapeText(test.standing.product),
      one.awaited,
      standsText(test.standing),
      madeText(test.standing),
      dueByText(test, on),
    ]),
  );

/** Tests that hold today and end within the weeks. */
const lapsingTable = (lapsing: readonly Lapsing[]): string =>
  table(
    [{ head: 'Client' }, { head: 'Product' }, { head: 'Holds until' }, { head: 'Test' }],
    lapsing.map(({ client, products, last, test }) => [
      escapeText(client.full),
      products.map(escapeText).join(', '),
      last,
      test === undefined ? '' : madeText({ test }),
    ]),
  );

const cautions = (due: readonly Due[], lapsing: readonly Lapsing[]): string[] => {
  const found = renewals(due).map(({ test }) => test.standing.status);
  if (found.length + lapsing.length === 0) return [];
  const hurt = found.some((status) => status === 'positive' || status === 'void');
  const topics: CautionTopic[] = ['skin-test', ...(hurt ? (['reaction'] as const) : [])];
  const said = topics.map((topic) => `- ${escapeText(caution(topic).replace(FIRST, '').trim())}`);
  return [`## ${CAUTION_HEADING}`, said.join('\n'), FIRST];
};

/** Who is due between two days, as Markdown. */
export const dueMarkdown = (
  journal: Journal,
  { due, unknown, lapsing }: DueList & { readonly lapsing: readonly Lapsing[] },
  { on, until }: { readonly on: string; readonly until: string },
): string => {
  const of = (status: Due['status']): Due[] => due.filter((one) => one.status === status);
  const [overdue, coming, away] = [of('overdue'), of('due'), of('away')];
  const here = [...overdue, ...coming];
  const section = (head: string, rows: readonly unknown[], ...body: string[]): string[] =>
    rows.length === 0 ? [] : [`## ${head}`, ...body];
  return `${[
    '# Who is due',
    joined([`${dayText(on)}, to ${dayText(until)}`, journal.salon.full && escapeText(journal.salon.full)], ' · '),
    ...unfoundBlocks(journal),
    ...(here.length === 0 ? ['By the notes nobody is due or overdue.'] : []),
    ...section('Overdue', overdue, dueTable(overdue)),
    ...section('Due', coming, dueTable(coming)),
    ...section(
      'Skin tests to make or read before then',
      renewals(here),
      'For the products of her last colour, as her tests stand on the day she is awaited.',
      testsTable(here, on),
    ),
    ...section('Skin tests that end within these weeks', lapsing, lapsingTable(lapsing)),
    ...section('Away for more than half a year', away, dueTable(away)),
    ...section(
      'Nothing to go by',
      unknown,
      'Seen within a year, with no `next` that gives a time and too few visits for a rhythm.',
      table(
        [{ head: 'Client' }, { head: 'Last visit' }],
        unknown.map(({ client, lastVisit }) => [escapeText(client.full), lastVisit]),
      ),
    ),
    ...cautions(here, lapsing),
  ].join('\n\n')}\n`;
};
