import {
  productsToTest,
  reactionsOf,
  type SkinTestStanding,
  type SkinTestStatus,
  skinTestOn,
  type TestMade,
  testsFor,
} from '../reckon/state.ts';
import { addDays, clockText } from '../text/dates.ts';
import { escapeText } from './escape.ts';
import { clientLines, type HeadView, listOf, notedIn, salonOfHead } from './head-view.ts';
import { commas, spaced } from './noted.ts';
import { type Column, table } from './tables.ts';
import { testText } from './test-words.ts';

/** The skin tests as they stand on a day, product by product, and every test and decision noted under the client. */

const COLUMNS: readonly Column[] = [{ head: 'Product' }, { head: 'Stands' }, { head: 'Test' }];

const STATUS: Readonly<Record<SkinTestStatus, string>> = {
  valid: 'holds',
  missing: 'none on record',
  unread: 'not read',
  unclear: 'not settled by its reading',
  'too-soon': 'made too short a time before',
  'read-too-soon': 'read too short a time after',
  expired: 'past its time',
  positive: 'POSITIVE',
  void: 'void since a reaction',
  'not-needed': 'noted as not needed',
};

const standsText = ({ status, test, every, voidedBy }: SkinTestStanding): string => {
  const made = test?.made;
  const last = made !== undefined && every !== undefined ? addDays(made.date, every) : undefined;
  if (status === 'valid') return last === undefined ? 'holds, the notes set no end' : `holds until ${last}`;
  if (status === 'expired' && last !== undefined) return `past its time since ${addDays(last, 1)}`;
  if (status === 'void' && voidedBy !== undefined) return `void since the reaction of ${voidedBy.date}`;
  return STATUS[status];
};

const momentText = (moment: TestMade['made']): string | undefined =>
  moment && spaced([moment.date, moment.minute === undefined ? undefined : clockText(moment.minute)]);

const RESULTS = { clear: 'clear', adverse: 'a reaction', other: 'neither `clear` nor `reaction`' } as const;

const madeText = (test: TestMade | undefined): string => {
  if (test === undefined) return '';
  if (test.notNeeded) return test.fact.says === undefined ? 'decision' : `“${escapeText(test.fact.says.text)}”`;
  return commas([
    test.made && `made ${momentText(test.made)}`,
    test.read && `read ${momentText(test.read)}`,
    test.result && RESULTS[test.result],
  ]);
};

/** Products that a skin test is asked for: those tested, and those used that hold oxidative dye, by name. */
const productsOf = ({ visits }: HeadView, tests: readonly TestMade[]): string[] => {
  const tested = tests.filter(({ kind }) => kind === 'skin').flatMap(({ products }) => products);
  const used = visits.flatMap(({ bowls }) => productsToTest(bowls));
  return [...new Set([...tested, ...used])].sort((a, b) => (a < b ? -1 : a > b ? 1 : 0));
};

/** How the tests of each product stand on the day. */
const standingsOf = (view: HeadView): SkinTestStanding[] => {
  const { on, client, visits } = view;
  const salon = salonOfHead(view);
  const tests = testsFor(client, salon.hours, on);
  const stoods = visits.map(({ visit }) => visit);
  const reactions = reactionsOf(client, stoods, salon.hours, on).filter(({ by }) => by === 'visit');
  return skinTestOn({ date: on, minute: undefined }, productsOf(view, tests), tests, salon, reactions);
};

/** Standings that hold nothing back; a positive test stands among the alerts as a reaction. */
const NO_ALERT: ReadonlySet<SkinTestStatus> = new Set(['valid', 'not-needed', 'positive']);

/** The products without a skin test that holds on the day, as one alert; none where every test holds. */
export const skinTestAlert = (view: HeadView): string[] => {
  const open = standingsOf(view).filter(({ status }) => !NO_ALERT.has(status));
  if (open.length === 0) return [];
  const products = open.map((one) => `${escapeText(one.product)} (${standsText(one)})`);
  return [`- **Skin test** none holds on ${view.on} for ${products.join(', ')}`];
};

/** How the tests of each product stand on the day, as a block of Markdown. */
export const standingTable = (view: HeadView): string[] => {
  const standings = standingsOf(view);
  if (standings.length === 0) return [`The notes show no skin test, and no product used that asks for one.`];
  const rows = standings.map((one) => [escapeText(one.product), standsText(one), madeText(one.test)]);
  return [table(COLUMNS, rows, `**Skin tests** as they stand on ${view.on}`)];
};

/** The tests of a client on a day as blocks of Markdown with their heading. */
export const testBlocks = (view: HeadView): string[] => [
  '## Tests',
  ...standingTable(view),
  ...listOf(
    clientLines(view, ['test']).map(({ stood, fact }) => `- **Tests noted** ${testText(notedIn(view, stood), fact)}`),
  ),
];
