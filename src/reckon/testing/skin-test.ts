import type { SalonSettings } from '../../journal/salon.ts';
import type { Duration } from '../../records/schema/values.ts';
import { addLength, dayNumber, daysBetween } from '../../text/dates.ts';
import { countAtFront } from '../../text/ordered.ts';
import { type Moment, momentNoted, type TestMade } from './tests.ts';

/**
 * Minutes from a skin test to its reading and to the colour while the salon has no policy of its own: 48 hours. Source:
 * a UK trade federation's page on allergy alert testing, terms of one insurer from 1 January 2021.
 */
export const SKIN_TEST_LEAD = 48 * 60;

export type SkinTestStatus =
  | 'valid'
  | 'missing'
  | 'unread'
  | 'unclear'
  | 'too-soon'
  | 'read-too-soon'
  | 'expired'
  | 'positive'
  | 'void'
  | 'not-needed';

/** What makes earlier tests void: a positive test, or a reaction with the bowls it can have come of. */
export type Voiding = Moment & { readonly bowls?: readonly string[] };

/** How one product stands on a day: the test that counts, and what it comes to. */
export type SkinTestStanding = {
  readonly product: string;
  readonly status: SkinTestStatus;
  readonly test: TestMade | undefined;
  /** Minutes that a test needs before it is read and before the colour. */
  readonly lead: number;
  /** How long a test holds; undefined: the notes set no end. */
  readonly every: Duration | undefined;
  /** The last day on which the test holds; undefined without a test, a day to count from, or an end. */
  readonly last: string | undefined;
  /** The reaction that made it void. */
  readonly voidedBy: Voiding | undefined;
  /** Minutes short of the salon’s time, where it was made or read too soon. */
  readonly short?: number;
};

const DAY = 1440;

/** The most minutes that can lie between two moments: a time not noted is taken in favour of the note. */
const mostBetween = (from: Moment, to: Moment): number =>
  daysBetween(from.date, to.date) * DAY + (to.minute ?? DAY - 1) - (from.minute ?? 0);

/** Whether a moment can be no later than another. */
const isBy = (moment: Moment, now: Moment): boolean => mostBetween(moment, now) >= 0;

const isAfter = (moment: Moment, other: Moment): boolean => mostBetween(moment, other) < 0;

const covers = ({ products }: TestMade, product: string): boolean =>
  products.length === 0 || products.includes(product);

/** When the result of a test was known; undefined while it is unread. */
const knownAt = ({ made, read, result }: TestMade): Moment | undefined =>
  result === undefined ? undefined : (read ?? made);

type Terms = {
  readonly lead: number;
  readonly every: Duration | undefined;
  readonly from: SalonSettings['skinTest']['from'];
  readonly voids: readonly Voiding[];
};

type Standing = Pick<SkinTestStanding, 'test' | 'status' | 'voidedBy' | 'last' | 'short'>;

/** The day that a test's time counts from: made, or read where the policy says so or no other day is noted. */
const countedFrom = (test: TestMade, from: Terms['from']): string | undefined => {
  const { made } = test;
  const known = knownAt(test);
  return (from === 'read' ? (known ?? made) : (made ?? known))?.date;
};

/** The last day on which a test holds. Of a term with two ends (`every 4-6mo`) the nearer counts. */
const lastDayOf = (test: TestMade, { every, from }: Terms): string | undefined => {
  const start = countedFrom(test, from);
  return start && every && addLength(start, every.value, every.unit, Math.floor);
};

/** How one test stands. A reading whose test is nowhere noted cannot be too soon; its days count from the reading. */
const standingOf = (test: TestMade, now: Moment, terms: Terms): Standing => {
  const { lead, voids } = terms;
  const { made, read } = test;
  const known = knownAt(test);
  const last = lastDayOf(test, terms);
  const is = (status: SkinTestStatus, voidedBy?: Voiding): Standing => ({ test, status, last, voidedBy });
  const shortOf = (status: SkinTestStatus, minutes: number): Standing => ({ ...is(status), short: lead - minutes });
  if (known === undefined || !isBy(known, now)) return is('unread');
  if (test.result === 'adverse') return is('positive');
  if (test.result === 'other') return is('unclear');
  const voidedBy = voids.find((moment) => isAfter(moment, made ?? known) && isBy(moment, now));
  if (voidedBy !== undefined) return is('void', voidedBy);
  if (made !== undefined && mostBetween(made, now) < lead) return shortOf('too-soon', mostBetween(made, now));
  if (made !== undefined && read !== undefined && mostBetween(made, read) < lead)
    return shortOf('read-too-soon', mostBetween(made, read));
  return is(last !== undefined && now.date > last ? 'expired' : 'valid');
};

/** What a decision that no test is needed cannot set aside. */
const STANDS: ReadonlySet<SkinTestStatus> = new Set(['valid', 'positive', 'unclear', 'void']);

/** The tests of one product, oldest first. */
type OfProduct = {
  readonly tests: readonly TestMade[];
  /** When each was made, as a number. */
  readonly moments: readonly number[];
  /** The last day on which one of those up to it can hold, as far as was asked; undefined: the notes set no end. */
  readonly lasts: (string | undefined)[];
  readonly adverse: readonly TestMade[];
};

/** The skin tests of a list, and what every day asks of them. */
type SkinTests = {
  readonly list: readonly TestMade[];
  readonly settings: SalonSettings['skinTest'];
  readonly skin: readonly TestMade[];
  readonly decisions: readonly TestMade[];
  readonly positives: readonly Moment[];
  readonly ofProduct: Map<string, OfProduct>;
};

/** The list asked for last: one visit after the other asks for the same one. */
let lately: SkinTests | undefined;

const skinTestsIn = (list: readonly TestMade[], settings: SalonSettings['skinTest']): SkinTests => {
  if (lately?.list === list && lately.settings === settings) return lately;
  const skin = list.filter(({ kind }) => kind === 'skin');
  lately = {
    list,
    settings,
    skin,
    decisions: skin.filter(({ notNeeded }) => notNeeded),
    positives: skin.flatMap((test) => (test.result === 'adverse' ? (knownAt(test) ?? []) : [])),
    ofProduct: new Map(),
  };
  return lately;
};

const latest = (a: string | undefined, b: string | undefined): string | undefined =>
  a === undefined || b === undefined ? undefined : a > b ? a : b;

const testsOf = ({ skin, ofProduct }: SkinTests, product: string): OfProduct => {
  const known = ofProduct.get(product);
  if (known !== undefined) return known;
  const tests = skin.filter((test) => !test.notNeeded && covers(test, product));
  const of = { tests, moments: tests.map(momentNoted), lasts: [], adverse: tests.filter(isAdverse) };
  ofProduct.set(product, of);
  return of;
};

const isAdverse = ({ result }: TestMade): boolean => result === 'adverse';

/** How many of some tests can have been made by then. */
const begunBy = (moments: readonly number[], { date, minute }: Moment): number => {
  if (moments.length === 0) return 0;
  const now = dayNumber(date) * DAY + (minute ?? DAY - 1);
  return countAtFront(moments, (moment) => moment <= now);
};

/**
 * Of the tests of a product the newest that holds, else the newest there is; but a positive test comes before all others,
 * whenever it was, until a letter lifts it. From the newest on back, and no further than needed.
 */
const bestOf = (
  { tests, moments, lasts, adverse }: OfProduct,
  now: Moment,
  terms: Terms,
  isLifted: (from: string) => boolean,
): Standing | undefined => {
  const begun = begunBy(moments, now);
  if (begun === 0) return undefined;
  for (let index = adverse.length - 1; index >= 0; index--) {
    const test = adverse[index] as TestMade;
    const first = test.made ?? test.read;
    const known = knownAt(test);
    if (first === undefined || known === undefined || !isBy(first, now) || !isBy(known, now)) continue;
    if (!isLifted(known.date)) return standingOf(test, now, terms);
  }
  for (let index = lasts.length; index < begun; index++) {
    const last = lastDayOf(tests[index] as TestMade, terms);
    lasts.push(index === 0 ? last : latest(lasts[index - 1], last));
  }
  let newest: Standing | undefined;
  let isRead = false;
  for (let index = begun - 1; index >= 0; index--) {
    const last = lasts[index];
    // None of the rest can hold any more, and only one that holds would come before this one.
    if (isRead && last !== undefined && last < now.date) break;
    const standing = standingOf(tests[index] as TestMade, now, terms);
    const { status } = standing;
    if (status === 'positive') continue;
    if (status === 'valid' || (!isRead && status === 'unclear')) return standing;
    isRead ||= status !== 'unread';
    newest ??= standing;
  }
  return newest;
};

/**
 * How each product stands on a day and minute: the newest test that holds, else the newest there is. A reading that
 * settles nothing stands until a later test of the product is read as clear; a positive test stands until a letter lifts
 * it, as `isLifted` says of its day: the dye was shown to harm, and a clear test can be false (SCCP/1104/07). With the
 * policy `void after reaction`, a later reaction or positive test makes every test before it void. `reactions` are those
 * noted at visits that dye can have caused. `tests` are oldest first.
 */
export const skinTestOn = (
  now: Moment,
  products: readonly string[],
  tests: readonly TestMade[],
  salon: SalonSettings,
  reactions: readonly Voiding[] = [],
  isLifted: (from: string) => boolean = () => false,
): SkinTestStanding[] => {
  const lead = salon.skinTest.lead ?? SKIN_TEST_LEAD;
  const { every, from, voidAfterReaction } = salon.skinTest;
  const skin = skinTestsIn(tests, salon.skinTest);
  const voids = voidAfterReaction ? [...skin.positives, ...reactions] : [];
  const terms: Terms = { lead, every, from, voids };
  return products.map((product): SkinTestStanding => {
    const best = bestOf(testsOf(skin, product), now, terms, isLifted);
    const decision = skin.decisions.find(
      (test) => (test.made === undefined || test.made.date === now.date) && covers(test, product),
    );
    if (decision !== undefined && (best === undefined || !STANDS.has(best.status)))
      return { product, lead, every, ...NONE, status: 'not-needed', test: decision };
    return { product, lead, every, ...(best ?? NONE) };
  });
};

const NONE: Standing = { status: 'missing', test: undefined, last: undefined, voidedBy: undefined };
