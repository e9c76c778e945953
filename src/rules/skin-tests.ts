import type { ShelfItem } from '../journal/shelf.ts';
import type { BowlReckoned, VisitReckoned } from '../reckon/model.ts';
import { listed } from '../reckon/say.ts';
import { isOffHead } from '../reckon/services.ts';
import {
  type Moment,
  reactionsOf,
  type SkinTestStanding,
  type SkinTestStatus,
  skinTestOn,
  type TestMade,
  testsFor,
} from '../reckon/state.ts';
import type { Policy } from '../records/schema/shelf.ts';
import type { Duration } from '../records/schema/values.ts';
import { addDays, clockText, daysBetween } from '../text/dates.ts';
import { recently } from '../text/recently.ts';
import type { Place } from '../text/span.ts';
import { kindFacts } from '../trade/kinds.ts';
import { bowlsPutOn } from './applied.ts';
import { lineName } from './cite.ts';
import { hasPeroxide, itemsIn, placeInBowl } from './contents.ts';
import type { Found } from './rule.ts';

/** A product that a skin test comes before, where it stands in the visit, and how its test stands. */
export type Tested = { readonly standing: SkinTestStanding; readonly place: Place };

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

const NONE: readonly Tested[] = [];

/** The reactions that can make a test void, where the salon’s policy says so. */
const reactionsBefore = ({ client, salon, date }: VisitReckoned): readonly Moment[] =>
  salon.skinTest.voidAfterReaction
    ? reactionsOf(client, client.visits, salon.hours, date).filter(
        // A reaction of the same day came of what was put on, and not before it.
        (reaction) => reaction.by === 'visit' && reaction.date < date,
      )
    : [];

const standingsOf = (visit: VisitReckoned): readonly Tested[] => {
  const places = new Map<string, Place>();
  for (const bowl of bowlsPutOn(visit)) {
    const items = toTest(bowl);
    if (items.length === 0 || isOffHead(visit, bowl)) continue;
    for (const item of items)
      if (!places.has(item.name))
        places.set(
          item.name,
          placeInBowl(bowl, (portion) => portion.item === item),
        );
  }
  if (places.size === 0) return NONE;
  const { client, salon, date } = visit;
  const now = momentOf(visit);
  const tests = testsFor(client, salon.hours, date);
  const reactions = reactionsBefore(visit);
  const standings = skinTestOn(now, [...places.keys()], tests, salon, reactions);
  return standings.map((standing) => ({ standing, place: places.get(standing.product) as Place }));
};

/** How the skin test of every product put on at a visit stands. Asked by every rule on skin tests. */
export const testedAt: (visit: VisitReckoned) => readonly Tested[] = recently(standingsOf);

const lasting = (minutes: number): string => (minutes % 60 === 0 ? `${minutes / 60} h` : `${minutes} min`);

/** `2026-09-01 11:00`, with what is known of it. */
export const momentText = ({ date, minute }: Moment): string =>
  minute === undefined ? date : `${date} ${clockText(minute)}`;

/** Hours between two moments, rounded down; undefined when a time is not noted. */
const hoursBetween = (from: Moment, to: Moment): number | undefined =>
  from.minute === undefined || to.minute === undefined
    ? undefined
    : Math.floor((daysBetween(from.date, to.date) * 1440 + to.minute - from.minute) / 60);

const between = (from: Moment, to: Moment): string => {
  const hours = hoursBetween(from, to);
  return hours === undefined ? `${daysBetween(from.date, to.date)} d` : `${hours} h`;
};

/** How much later a moment is: in minutes up to two hours, else in hours or days. */
const later = (from: Moment, to: Moment): string => {
  const minutes =
    from.minute === undefined || to.minute === undefined || from.date !== to.date ? undefined : to.minute - from.minute;
  return minutes === undefined || minutes >= 120 ? between(from, to) : `${minutes} minute${minutes === 1 ? '' : 's'}`;
};

/** `26 w`, `6 mo`: how long a test holds, as the policy says it. */
const termText = ({ value, unit }: Duration): string => `${value} ${unit}`;

/** What the salon asks of a skin test, and from where. */
export const policyText = ({ salon }: VisitReckoned, { lead, every }: SkinTestStanding): string => {
  const { policy, term, from } = salon.skinTest;
  const lineOf = ({ line }: Policy): string =>
    salon.stood === undefined ? '' : ` (the salon’s policy, ${lineName(salon.stood.file, salon.stood.line + line)})`;
  const time = lasting(lead);
  const asks = `A skin test is made ${time} before the colour, read ${time} after it was made`;
  const holds = every === undefined ? '' : `${termText(every)}${from === 'read' ? ' from its reading' : ''}`;
  if (policy !== undefined && (term === undefined || term === policy))
    return `${asks}${holds === '' ? '' : `, and holds ${holds}`}${lineOf(policy)}.`;
  const source =
    policy === undefined
      ? ` (a UK trade federation’s page on allergy alert testing; no \`policy skin-test\` line ${term === undefined ? 'stands' : 'sets a time'})`
      : lineOf(policy);
  return term === undefined ? `${asks}${source}.` : `${asks}${source}, and holds ${holds}${lineOf(term)}.`;
};

const lateText = (last: string | undefined, date: string): string =>
  `${last === undefined ? 0 : daysBetween(last, date)} d`;

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
      const late = later(momentOf(visit), test.read);
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
      return { says: `is void since the reaction of ${voidedBy?.date}`, label: 'test void' };
    default:
      return { says: 'was positive', label: 'test positive' };
  }
};

/** Days before a visit that the test in an example is made. */
const LEAD = 3;

/** The newest skin test of a client up to a visit, made with whatever products it names. */
const otherTest = ({ client, salon, date }: VisitReckoned): TestMade | undefined =>
  testsFor(client, salon.hours, date).findLast(
    ({ kind, notNeeded, products }) => kind === 'skin' && !notNeeded && products.length > 0,
  );

const missingFound = (visit: VisitReckoned, { standing, place }: Tested, names: string, todo: string): Found => {
  const expected = policyText(visit, standing);
  const other = otherTest(visit);
  const asIn = `test skin ${addDays(visit.date, -LEAD)} 11:00 ${standing.product}`;
  const write = `Write the test that was made, as in \`${asIn}\`; ${todo}`;
  const said = `${names}: no skin test is noted.`;
  if (other === undefined) return { place, message: said, expected, todo: write, label: 'no skin test' };
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

/** One finding a visit for all products whose test stands so, named together. */
export const skinTestFound = (
  visit: VisitReckoned,
  statuses: readonly SkinTestStatus[],
  todo: string,
): readonly Found[] => {
  const isSo = ({ standing }: Tested): boolean => statuses.includes(standing.status);
  const tested = testedAt(visit);
  const first = tested.find(isSo);
  if (first === undefined) return [];
  const { standing, place } = first;
  const { test } = standing;
  const names = tested
    .filter(isSo)
    .map(({ standing: { product } }) => product)
    .join(', ');
  if (test === undefined) return [missingFound(visit, first, names, todo)];
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
    },
  ];
};
