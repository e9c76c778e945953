import type { ClientFile } from '../../journal/journal.ts';
import type { SalonSettings } from '../../journal/salon.ts';
import type { Stood } from '../../journal/source.ts';
import type { Test } from '../../records/schema/client.ts';
import type { Visit } from '../../records/schema/entry.ts';
import { dayNumber } from '../../text/dates.ts';
import { countAtFront } from '../../text/ordered.ts';
import { recently } from '../../text/recently.ts';
import type { Place } from '../../text/span.ts';
import { placeOf } from '../cite.ts';
import { minuteOf } from '../clock/settle.ts';
import type { Minute } from '../model.ts';
import { type Noted, onFile } from '../on-file.ts';
import { resultOf, type TestResult } from './test-result.ts';

type Hours = SalonSettings['hours'];

/** A day, and the minute of it where one is noted. */
export type Moment = { readonly date: string; readonly minute: Minute | undefined };

/** A test of a client, wherever it is noted, with its reading, wherever that is. */
export type TestMade = {
  /** skin, strand, metal, stretch, porosity. */
  readonly kind: string;
  /** With what, by name; empty: not said, and it counts for every product. */
  readonly products: readonly string[];
  /** When it was made or decided; undefined for a reading whose test is nowhere noted, and without a date. */
  readonly made: Moment | undefined;
  /** Undefined while unread, and for a result without a day of its own: then it was seen when it was made. */
  readonly read: Moment | undefined;
  /** What was seen, where it says so; `other` leaves a skin test unsettled. */
  readonly result: TestResult | undefined;
  /** A decision that none is needed, and no test. */
  readonly notNeeded: boolean;
  readonly fact: Test;
  /** The line that says the result: its own, or one that only reads it. */
  readonly reading: Test;
  readonly place: Place;
  /** Where the reading stands, on a line of its own. */
  readonly readPlace: Place | undefined;
  /** The visit it is noted under; undefined under the client. */
  readonly visit: Stood<Visit> | undefined;
};

const momentOf = (date: string | undefined, clock: Test['time'], hours: Hours): Moment | undefined =>
  date === undefined ? undefined : { date, minute: clock && minuteOf(clock, hours) };

/** Sorts as the moments do; what is not dated comes first, and a day without a time before its times. */
const orderOf = (moment: Moment | undefined): number =>
  moment === undefined ? Number.MIN_SAFE_INTEGER : dayNumber(moment.date) * 1440 + (moment.minute ?? 0);

/** Whether a line only reads a test made earlier: it has a reading, and neither a day nor a time of its own. */
const isReadingLine = (fact: Test): boolean =>
  fact.read && (!fact.made || (fact.date === undefined && fact.time === undefined && fact.mix === undefined));

const testMade = ({ stood, fact, day }: Noted<'test'>, hours: Hours): TestMade => {
  const isVisit = stood.entry.kind === 'visit';
  const products = [...fact.products, ...(fact.mix ?? []).flatMap(({ product }) => product ?? [])];
  const made = fact.made || fact.notNeeded ? momentOf(fact.date?.date ?? day, fact.time, hours) : undefined;
  // Read without a day: on the day of its time or of the visit it is noted under; else nobody says when.
  const isThatDay = fact.readTime !== undefined || isReadingLine(fact);
  const readDay = fact.readDate?.date ?? (isThatDay ? (fact.date?.date ?? day) : undefined);
  return {
    kind: fact.test.name,
    products: [...new Set(products.map(({ name }) => name))],
    made,
    read: fact.read ? momentOf(readDay, fact.readTime, hours) : undefined,
    result: resultOf(fact),
    notNeeded: fact.notNeeded,
    fact,
    reading: fact,
    place: placeOf(stood, fact, fact.test.at),
    readPlace: undefined,
    visit: isVisit ? (stood as Stood<Visit>) : undefined,
  };
};

const isUnread = ({ made, read, result, notNeeded }: TestMade): boolean =>
  made !== undefined && read === undefined && result === undefined && !notNeeded;

const covers = (reading: TestMade, test: TestMade): boolean =>
  reading.products.length === 0 ||
  test.products.length === 0 ||
  reading.products.some((name) => test.products.includes(name));

type Dated = { readonly day: string | undefined; readonly test: TestMade };

/** When a test was made, or read where that alone is noted, as a number of minutes; undated ones before all others. */
export const momentNoted = ({ made, read }: TestMade): number => orderOf(made ?? read);

/**
 * What is noted of a client’s tests, oldest first, the days of the visits they are noted under, in order, and the answer
 * given last with the number of those days that it holds: the rules ask for one day in a row, and most days bring none.
 */
type TestsNoted = {
  readonly all: readonly Dated[];
  readonly days: readonly string[];
  count: number;
  tests: readonly TestMade[] | undefined;
  ofKind: Map<string, readonly TestMade[]>;
};

const notedOf = recently(
  (_client: ClientFile) =>
    // Nearly always one salon’s hours.
    new Map<Hours, TestsNoted>(),
);

const testsNoted = (client: ClientFile, hours: Hours): TestsNoted => {
  const byHours = notedOf(client);
  let noted = byHours.get(hours);
  if (noted === undefined) {
    const all = onFile(client)
      .test.map((one) => ({ day: one.day, test: testMade(one, hours) }))
      .sort((a, b) => momentNoted(a.test) - momentNoted(b.test));
    const days = all.flatMap(({ day }) => day ?? []).sort();
    noted = { all, days, count: 0, tests: undefined, ofKind: new Map() };
    byHours.set(hours, noted);
  }
  return noted;
};

/**
 * Every test of a client and her visits up to a day as one list, oldest first. A line that only reads a test goes with
 * the nearest earlier unread test of its kind, wherever that is noted.
 */
export const testsFor = (client: ClientFile, hours: Hours, upTo?: string): readonly TestMade[] => {
  const noted = testsNoted(client, hours);
  const count = upTo === undefined ? noted.days.length : countAtFront(noted.days, (day) => day <= upTo);
  if (noted.tests === undefined || noted.count !== count) {
    noted.tests = testsUpTo(noted.all, upTo);
    noted.count = count;
    noted.ofKind = new Map();
  }
  return noted.tests;
};

/** Those of `testsFor` that are of one kind: there may be a long row of another. */
export const testsOfKind = (client: ClientFile, hours: Hours, kind: string, upTo?: string): readonly TestMade[] =>
  testsThat(client, hours, upTo, kind, (test) => test.kind === kind);

const testsThat = (
  client: ClientFile,
  hours: Hours,
  upTo: string | undefined,
  key: string,
  are: (test: TestMade) => boolean,
): readonly TestMade[] => {
  const tests = testsFor(client, hours, upTo);
  const { ofKind } = testsNoted(client, hours);
  let those = ofKind.get(key);
  if (those === undefined) {
    those = tests.filter(are);
    ofKind.set(key, those);
  }
  return those;
};

/** The kinds of test that are of the fibre. */
const OF_FIBRE: ReadonlySet<string> = new Set(['strand', 'stretch', 'porosity']);

/** Those of `testsFor` that are of the fibre. */
export const testsOfFibre = (client: ClientFile, hours: Hours, upTo?: string): readonly TestMade[] =>
  testsThat(client, hours, upTo, 'fibre', ({ kind }) => OF_FIBRE.has(kind));

const testsUpTo = (noted: readonly Dated[], upTo: string | undefined): readonly TestMade[] => {
  const all: TestMade[] = [];
  for (const { day, test } of noted) if (upTo === undefined || day === undefined || day <= upTo) all.push(test);
  if (!all.some(({ fact }) => isReadingLine(fact))) return all;
  const tests = all.filter(({ fact }) => !isReadingLine(fact));
  const readings = all.filter(({ fact }) => isReadingLine(fact)).sort((a, b) => orderOf(a.read) - orderOf(b.read));
  for (const reading of readings) {
    const [first, ...more] = tests.filter(
      (test) =>
        test.kind === reading.kind &&
        isUnread(test) &&
        covers(reading, test) &&
        (reading.read === undefined || orderOf(test.made) <= orderOf(reading.read)),
    );
    if (first === undefined) {
      tests.push(reading);
      continue;
    }
    const { read, result, place: readPlace, fact } = reading;
    // Oldest first, so the last one is the nearest.
    const test = more.at(-1) ?? first;
    tests[tests.indexOf(test)] = { ...test, read, result, readPlace, reading: fact };
  }
  return tests.sort((a, b) => momentNoted(a) - momentNoted(b));
};
