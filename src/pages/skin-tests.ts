import type { Journal } from '../journal/journal.ts';
import { placeOf } from '../reckon/cite.ts';
import {
  leaveSince,
  productsToTest,
  type SkinTestStanding,
  type SkinTestStatus,
  skinTestOn,
  type TestMade,
  testsFor,
} from '../reckon/client/state.ts';
import { putsOnColour } from '../reckon/head/services.ts';
import { addDays, clockText } from '../text/dates.ts';
import type { Line } from '../text/span.ts';
import { sameLine } from '../text/span.ts';
import { escapeText } from './escape.ts';
import { type ClientLine, clientLines, type HeadView, listOf, notedIn, salonOfHead } from './head-view.ts';
import { commas, spaced } from './noted.ts';
import { type Column, table } from './tables.ts';
import { testText } from './test-words.ts';
import { isGrounded, unfound } from './unfound.ts';

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

const standsText = (
  { status, last, every, voidedBy }: SkinTestStanding,
  journal: Pick<Journal, 'salons' | 'shelf'>,
): string => {
  // Without the salon's policy, or the shelf, nothing is said to hold.
  if (status === 'valid' && !isGrounded(journal)) return `clear; no ${unfound(journal).join(' and no ')} was read`;
  if (status === 'valid' && last !== undefined) return `holds until ${last}`;
  if (status === 'valid')
    return every === undefined ? 'holds, the notes set no end' : 'clear, but no day says until when it holds';
  if (status === 'expired' && last !== undefined) return `past its time since ${addDays(last, 1)}`;
  if (status === 'void' && voidedBy !== undefined) return `void since the reaction of ${voidedBy.date}`;
  return STATUS[status];
};

const momentText = (moment: TestMade['made']): string | undefined =>
  moment && spaced([moment.date, moment.minute === undefined ? undefined : clockText(moment.minute)]);

const RESULTS = { clear: 'clear', adverse: 'a reaction', other: 'neither plainly `clear` nor `reaction`' } as const;

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
const productsOf = ({ visits, ahead = [], planned = [] }: HeadView, tests: readonly TestMade[]): string[] => {
  const tested = tests.filter(({ kind }) => kind === 'skin').flatMap(({ products }) => products);
  const used = [...visits, ...ahead, ...planned].flatMap(productsToTest);
  return [...new Set([...tested, ...used])].sort((a, b) => (a < b ? -1 : a > b ? 1 : 0));
};

/** How the tests of each product stand on the day. */
const standingsOf = (view: HeadView): SkinTestStanding[] => {
  const { on, client, visits } = view;
  const salon = salonOfHead(view);
  const tests = testsFor(client, salon.hours, on);
  const reactions = (visits.at(-1)?.reacted ?? []).filter(({ dye, date }) => dye && date <= on);
  return skinTestOn(
    { date: on, minute: undefined },
    productsOf(view, tests),
    tests,
    salon,
    reactions,
    (from) => leaveSince(client, from, on) !== undefined,
  );
};

/** Visits with colour that say what she gets: the latest few. A choice, no source. */
const LATEST = 3;

/** The products that she gets: of her last colours, of the day’s visit, and of those planned or noted ahead. */
const gets = ({ visits, ahead = [], planned = [], on }: HeadView): ReadonlySet<string> => {
  const last = visits.filter((visit) => visit.date < on && putsOnColour(visit)).slice(-LATEST);
  const now = visits.filter(({ date }) => date === on);
  return new Set([...last, ...now, ...ahead, ...planned].flatMap(productsToTest));
};

/** Standings that hold nothing back; a positive test stands among the alerts as a reaction. */
const NO_ALERT: ReadonlySet<SkinTestStatus> = new Set(['valid', 'not-needed', 'positive']);

/** The products she gets without a skin test that holds on the day, as one alert; none where every test holds. */
export const skinTestAlert = (view: HeadView): string[] => {
  const wanted = gets(view);
  const open = standingsOf(view).filter(({ status, product }) => !NO_ALERT.has(status) && wanted.has(product));
  if (open.length === 0) return [];
  const products = open.map((one) => `${escapeText(one.product)} (${standsText(one, view.journal)})`);
  return [`- **Skin test** none holds on ${view.on} for ${products.join(', ')}`];
};

/** How the tests of each product stand on the day, as a block of Markdown. */
export const standingTable = (view: HeadView): string[] => {
  const standings = standingsOf(view);
  if (standings.length === 0)
    return [
      isGrounded(view.journal)
        ? 'The notes show no skin test, and no product used that asks for one.'
        : 'These notes show no skin test.',
    ];
  // Products that one test stands for, alike, share a row.
  const rows: [string, string, string][] = [];
  for (const one of standings) {
    const [stands, made] = [standsText(one, view.journal), madeText(one.test)];
    const row = rows.find((other) => other[1] === stands && other[2] === made);
    if (row === undefined) rows.push([escapeText(one.product), stands, made]);
    else row[0] = `${row[0]}, ${escapeText(one.product)}`;
  }
  return [table(COLUMNS, rows, `**Skin tests** as they stand on ${view.on}`)];
};

/** A test noted under the client, with the line that reads it where that is another. */
type NotedTest = { readonly line: ClientLine<'test'>; readonly reading: ClientLine<'test'> | undefined };

/** The tests noted under the client: a line that only reads one goes with it. */
const testsNoted = (view: HeadView, tests: readonly TestMade[]): NotedTest[] => {
  const lines = clientLines(view, ['test']);
  const at = (place: Line): ClientLine<'test'> | undefined =>
    lines.find(({ stood, fact }) => sameLine(place, placeOf(stood, fact)));
  const readings = new Map(
    tests.flatMap(({ place, readPlace }) => {
      const [reading, made] = [readPlace && at(readPlace), at(place)];
      return reading !== undefined && made !== undefined ? [[made, reading] as const] : [];
    }),
  );
  const read = new Set(readings.values());
  return lines.filter((line) => !read.has(line)).map((line) => ({ line, reading: readings.get(line) }));
};

const notedItem = (view: HeadView, { line, reading }: NotedTest): string => {
  const later = reading && { noted: notedIn(view, reading.stood), fact: reading.fact };
  return `- **Tests noted** ${testText(notedIn(view, line.stood), line.fact, later)}`;
};

/** Skin tests that were clear, and that a later one has taken the place of; the others noted under the client. */
const byAge = (view: HeadView): { readonly earlier: readonly NotedTest[]; readonly now: readonly NotedTest[] } => {
  const tests = testsFor(view.client, salonOfHead(view).hours);
  const standings = standingsOf(view);
  const stands = (line: Line): boolean =>
    standings.some(({ test }) => test !== undefined && sameLine(test.place, line));
  const old = tests
    .filter(({ kind, result, place }) => kind === 'skin' && result === 'clear' && !stands(place))
    .flatMap(({ place, readPlace }) => [place, ...(readPlace === undefined ? [] : [readPlace])]);
  const all = testsNoted(view, tests);
  const isOld = ({ line: { stood, fact } }: NotedTest): boolean =>
    old.some((place) => sameLine(place, placeOf(stood, fact)));
  return { earlier: all.filter(isOld), now: all.filter((test) => !isOld(test)) };
};

const earlierItems = (view: HeadView, earlier: readonly NotedTest[]): string[] => {
  // One takes no more room than to say that there is one.
  if (earlier.length < 2) return earlier.map((test) => notedItem(view, test));
  return [`- **Tests noted** ${earlier.length} earlier, all clear`];
};

/** The tests of a client on a day as blocks of Markdown with their heading. */
export const testBlocks = (view: HeadView): string[] => {
  const { earlier, now } = byAge(view);
  const items = [...now.map((test) => notedItem(view, test)), ...earlierItems(view, earlier)];
  return ['## Tests', ...standingTable(view), ...listOf(items)];
};

/** The tests that the first page only counts, as blocks of Markdown with their heading. */
export const earlierTestBlocks = (view: HeadView): string[] => {
  const { earlier } = byAge(view);
  return earlier.length < 2 ? [] : ['## Earlier tests', ...listOf(earlier.map((test) => notedItem(view, test)))];
};
