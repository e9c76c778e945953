import type { ShelfItem } from '../journal/shelf.ts';
import { bowlsPutOn } from '../reckon/bowl/applied.ts';
import { hasPeroxide, itemsIn, placeInBowl, portionsIn } from '../reckon/bowl/contents.ts';
import { placeOf } from '../reckon/cite.ts';
import {
  leaveSince,
  type Moment,
  type SkinTestStanding,
  type SkinTestStatus,
  skinTestOn,
  type TestMade,
  testsFor,
  type Voiding,
} from '../reckon/client/state.ts';
import { isOffHead } from '../reckon/head/services.ts';
import type { BowlReckoned, VisitReckoned } from '../reckon/model.ts';
import { listed } from '../reckon/say.ts';
import type { Policy } from '../records/schema/shelf.ts';
import type { Duration } from '../records/schema/values.ts';
import { addDays, clockText, daysBetween } from '../text/dates.ts';
import { recently } from '../text/recently.ts';
import type { Sentence } from '../text/sentence.ts';
import { lineName, sentence } from '../text/sentence.ts';
import type { Place } from '../text/span.ts';
import { isClear } from '../trade/dye.ts';
import { kindFacts } from '../trade/kinds.ts';
import { type Found, NONE } from './rule.ts';

/** A product that a skin test comes before, where it stands in the visit, and how its test stands. */
export type Tested = {
  readonly standing: SkinTestStanding;
  readonly place: Place;
  /** Only clear shades of it were put on, which hold no dye. */
  readonly clear: boolean;
};

/** The shelf items in a bowl that a skin test comes before: oxidative dye, as it was mixed. */
const toTest = (bowl: BowlReckoned): readonly ShelfItem[] =>
  itemsIn(bowl).filter(({ kind }) => {
    if (kind === undefined) return false;
    const { skinTest, oxidative } = kindFacts(kind);
    return skinTest && (oxidative === true || hasPeroxide(bowl));
  });

/** The moment that a test has to lie before: the visit’s own time, else its first `on`. */
const momentOf = ({ visit, date, clock }: VisitReckoned): Moment => {
  const first = clock.runs.length === 0 ? undefined : Math.min(...clock.runs.map(({ firstOn }) => firstOn));
  return { date, minute: visit.entry.time?.minutes ?? first };
};

const NO_TESTED: readonly Tested[] = [];

/** The reactions that can make a test void: one of the same day came of what was put on, and not before it. */
const reactionsBefore = ({ reacted, date }: VisitReckoned): readonly Voiding[] =>
  reacted.filter((reaction) => reaction.dye && reaction.date < date);

const isClearIn = (bowl: BowlReckoned, item: ShelfItem): boolean =>
  portionsIn(bowl).every((portion) => portion.item !== item || isClear(portion.shade?.toLowerCase()));

const standingsOf = (visit: VisitReckoned): readonly Tested[] => {
  const places = new Map<string, Place>();
  const dyed = new Set<string>();
  for (const bowl of bowlsPutOn(visit)) {
    const items = toTest(bowl);
    if (items.length === 0 || isOffHead(visit, bowl)) continue;
    for (const item of items) {
      if (!isClearIn(bowl, item)) dyed.add(item.name);
      if (!places.has(item.name))
        places.set(
          item.name,
          placeInBowl(bowl, (portion) => portion.item === item),
        );
    }
  }
  if (places.size === 0) return NO_TESTED;
  const { client, salon, date } = visit;
  const now = momentOf(visit);
  const tests = testsFor(client, salon.hours, date);
  const isLifted = (from: string): boolean => leaveSince(client, from, date) !== undefined;
  const standings = skinTestOn(now, [...places.keys()], tests, salon, reactionsBefore(visit), isLifted);
  return standings.map((standing) => ({
    standing,
    place: places.get(standing.product) as Place,
    clear: !dyed.has(standing.product),
  }));
};

/** How the skin test of every product put on at a visit stands. Asked by every rule on skin tests. */
export const testedAt: (visit: VisitReckoned) => readonly Tested[] = recently(standingsOf);

/** `48 h`, `47 h 50 min`, `20 min` */
const lasting = (minutes: number): string => {
  const [hours, rest] = [Math.floor(minutes / 60), minutes % 60];
  if (hours === 0) return `${rest} min`;
  return rest === 0 ? `${hours} h` : `${hours} h ${rest} min`;
};

/** `2026-09-01 11:00`, with what is known of it. */
export const momentText = ({ date, minute }: Moment): string =>
  minute === undefined ? date : `${date} ${clockText(minute)}`;

/** How long it is between two moments: in days where a time is not noted. */
const between = (from: Moment, to: Moment): string => {
  const days = daysBetween(from.date, to.date);
  if (from.minute === undefined || to.minute === undefined) return `${days} d`;
  return lasting(days * 1440 + to.minute - from.minute);
};

/** `26 w`, `6 mo`: how long a test holds, as the policy says it. */
const termText = ({ value, unit }: Duration): string => `${value} ${unit}`;

/** What the salon asks of a skin test, and from where. */
export const policyText = ({ salon }: VisitReckoned, { lead, every }: SkinTestStanding): Sentence => {
  const { policy, term, from } = salon.skinTest;
  const lineOf = (policy: Policy): Sentence =>
    salon.stood === undefined ? '' : sentence` (the salon’s policy, ${lineName(placeOf(salon.stood, policy))})`;
  const time = lasting(lead);
  const asks = `A skin test is made ${time} before the colour, read ${time} after it was made`;
  const holds = every === undefined ? '' : `${termText(every)}${from === 'read' ? ' from its reading' : ''}`;
  if (policy !== undefined && (term === undefined || term === policy))
    return sentence`${asks}${holds === '' ? '' : `, and holds ${holds}`}${lineOf(policy)}.`;
  const source =
    policy === undefined
      ? ` (a UK trade federation’s page on allergy alert testing; no \`policy skin-test\` line ${term === undefined ? 'stands' : 'sets a time'})`
      : lineOf(policy);
  return term === undefined
    ? sentence`${asks}${source}.`
    : sentence`${asks}${source}, and holds ${holds}${lineOf(term)}.`;
};

const lateText = (last: string | undefined, date: string): string =>
  `${last === undefined ? 0 : daysBetween(last, date)} d`;
/** `2026-03-04`, `2026-03-04 with bowl A` */
const voidedText = (by: Voiding | undefined): string =>
  by?.bowls === undefined || by.bowls.length === 0
    ? (by?.date ?? '')
    : `${by.date} with bowl${by.bowls.length === 1 ? '' : 's'} ${listed(by.bowls)}`;

/** What is wrong with a test: what a message says of it after its day, and a label. */
const sayingOf = (
  visit: VisitReckoned,
  { status, test, last, voidedBy }: SkinTestStanding,
): { readonly says: string; readonly label: string; readonly todo?: string } => {
  const before = test?.made && between(test.made, momentOf(visit));
  const after = test?.made && test.read && between(test.made, test.read);
  switch (status) {
    case 'unread': {
      if (test?.read === undefined) return { says: 'has no result yet', label: 'test not read' };
      const late = between(momentOf(visit), test.read);
      return {
        says: `was read ${late} after the visit began`,
        label: `read ${late} after`,
        todo: 'Correct the day or the time that was typed wrongly.',
      };
    }
    case 'too-soon':
      return { says: `was made ${before} before the visit`, label: `made ${before} before` };
    case 'read-too-soon':
      return { says: `was read after ${after}`, label: `read after ${after}` };
    case 'expired':
      return {
        says: `held until ${last}; the visit is ${lateText(last, visit.date)} later`,
        label: `held until ${last}`,
      };
    case 'void':
      return { says: `is void since the reaction of ${voidedText(voidedBy)}`, label: 'test void' };
    default:
      return { says: 'was positive', label: 'test positive' };
  }
};

/** Days before a visit that the test in an example is made. */
const LEAD = 3;

/** Whether a test tells of a visit at all: one of a later day does not. */
const isBefore = ({ date }: VisitReckoned, { made }: TestMade): boolean => made === undefined || made.date <= date;

/** The newest skin test of a client up to a visit, made with whatever products it names. */
const otherTest = (visit: VisitReckoned): TestMade | undefined =>
  testsFor(visit.client, visit.salon.hours, visit.date).findLast(
    (test) => test.kind === 'skin' && !test.notNeeded && test.products.length > 0 && isBefore(visit, test),
  );

const isOf = ({ kind, notNeeded, products }: TestMade, product: string): boolean =>
  kind === 'skin' && !notNeeded && (products.length === 0 || products.includes(product));

const isTested = (visit: VisitReckoned, product: string): boolean =>
  testsFor(visit.client, visit.salon.hours, visit.date).some((test) => isOf(test, product) && isBefore(visit, test));

/** The first day after a visit on which a skin test of a product was made. */
const testedLater = (visit: VisitReckoned, product: string): string | undefined =>
  testsFor(visit.client, visit.salon.hours).find((test) => isOf(test, product) && !isBefore(visit, test))?.made?.date;

const missingFound = (visit: VisitReckoned, { standing, place }: Tested, names: string, todo: string): Found => {
  const expected = policyText(visit, standing);
  const other = otherTest(visit);
  const asIn = `test skin ${addDays(visit.date, -LEAD)} 11:00 ${standing.product}`;
  const write = `Write the test that was made, as in \`${asIn}\`; ${todo}`;
  // One that was positive, and lifted by a letter, says nothing for it.
  const later = testedLater(visit, standing.product);
  const said = isTested(visit, standing.product)
    ? `${names}: no skin test is noted since the letter.`
    : later === undefined
      ? `${names}: no skin test is noted.`
      : `${names}: no skin test is noted before it; that of ${later} was made after.`;
  if (other === undefined || isTested(visit, standing.product))
    return { place, message: said, expected, todo: write, label: 'no skin test' };
  const made = other.made === undefined ? 'a day not noted' : other.made.date;
  const message = `The skin test of ${made} was made with ${listed(other.products)}; none with ${names}.`;
  return {
    place,
    message,
    expected,
    todo: write,
    label: 'no skin test',
    also: [{ place: other.place, says: 'the test' }],
  };
};

/** Minutes short of its time by which a test is a slip to put right, and no stop. A choice. */
const SLIP = 60;

/** How grave it is, where it is less than a stop: of a clear shade, or within an hour of its time. */
const lighter = (clear: boolean, tested: readonly Tested[]): Pick<Found, 'severity'> => {
  if (clear) return { severity: 'mind' };
  return tested.every(({ standing: { short } }) => short !== undefined && short <= SLIP) ? { severity: 'fix' } : {};
};

/** One finding a visit for all products whose test stands so, named together; clear shades only where nothing else is. */
export const skinTestFound = (
  visit: VisitReckoned,
  all: readonly Tested[],
  stands: readonly SkinTestStatus[],
  todo: string,
): readonly Found[] => {
  const so = all.filter(({ standing }) => stands.includes(standing.status));
  const dyed = so.filter(({ clear, standing }) => !clear || standing.status === 'positive');
  const tested = dyed.length === 0 ? so : dyed;
  const [first] = tested;
  if (first === undefined) return NONE;
  const { standing, place } = first;
  const { test } = standing;
  const clear = dyed.length === 0;
  const products = tested.map(({ standing: { product } }) => product).join(', ');
  const names = clear ? `${products}, in a clear shade without dye` : products;
  const milder = lighter(clear, tested);
  if (test === undefined) return [{ ...missingFound(visit, first, names, todo), ...milder }];
  const made = test.made === undefined ? 'a day not noted' : momentText(test.made);
  const { says, label, todo: another } = sayingOf(visit, standing);
  return [
    {
      place,
      message: `${names}: the skin test of ${made} ${says}.`,
      expected: policyText(visit, standing),
      todo: another ?? todo,
      label,
      also: [{ place: test.place, says: 'the test' }],
      ...milder,
    },
  ];
};
