import { cautionsOn, leaveSince } from '../../reckon/client/state.ts';
import type { VisitReckoned } from '../../reckon/model.ts';
import type { Place } from '../../text/span.ts';
import { sameLine } from '../../text/span.ts';
import { monthTold } from '../../trade/day-told.ts';
import { medicineBegun } from '../../trade/medical.ts';
import { defineRule, type Found, NONE } from '../rule.ts';
import { dayNamed, historySaid, isOnFile, notesSaid, type SaidOnFile } from '../said-on-file.ts';
import { testedAt } from '../skin-tests.ts';

type Begun = SaidOnFile & { readonly day: string };

const tells = (text: string): boolean => medicineBegun(text) !== undefined;

/** Medicines that were begun, by what is said up to a visit; each with its day, or the day of the visit it is said at. */
const begunBy = ({ client, date }: VisitReckoned): readonly Begun[] =>
  [
    ...cautionsOn(date, client).map(({ text, place }) => ({ text, place, from: date })),
    ...historySaid(client, date).map(({ text, place }) => ({ text, place, from: '' })),
    ...notesSaid(client, date, tells),
  ].flatMap(({ text, place, from }) => {
    const day = dayNamed(text) ?? monthTold(text, from === '' ? date : from) ?? from;
    return medicineBegun(text) === undefined || day > date ? [] : [{ text, place, day }];
  });

const foundIn = (visit: VisitReckoned, { text, day, place }: Begun): Found | undefined => {
  const tested = testedAt(visit).find(
    ({ standing: { status, test }, clear }) =>
      !clear && status === 'valid' && test?.made !== undefined && test.made.date < day,
  );
  const made = tested?.standing.test?.made;
  if (tested === undefined || made === undefined || leaveSince(visit.client, day, visit.date) !== undefined)
    return undefined;
  return {
    place: tested.place,
    message: `${tested.standing.product}: its skin test was made on ${made.date}, and since then: "${text}".`,
    expected: 'A medicine can bring on an allergy, or hide one in a test (common practice).',
    todo: 'Make the test anew, or write what was asked, as in `asked medicines "the same as in spring"`.',
    label: 'tested before it',
    also: [{ place, says: 'the medicine' }],
  };
};

/** Each line is thought of once. */
function* found(visits: readonly VisitReckoned[]): Generator<Found> {
  const minded: Place[] = [];
  for (const visit of visits)
    for (const begun of begunBy(visit)) {
      const isMinded = minded.some((place) => sameLine(place, begun.place));
      const one = isMinded ? undefined : foundIn(visit, begun);
      if (one === undefined) continue;
      minded.push(begun.place);
      yield one;
    }
}

export default defineRule({
  name: 'medicine-since-test',
  family: 'testing',
  severity: 'mind',
  bears: 'always',
  over: 'client',
  what: 'Oxidative dye is used by a skin test that was made before a medicine was begun, as a caution, a note or an answer tells.',
  why: 'What she takes can change how her skin answers, so the test before it says less.',
  source: { kind: 'common practice' },
  caution: 'skin-test',
  check: (client, visits) => (isOnFile(client, tells) ? found(visits) : NONE),
  bad: `
    product dev-6 "Cream developer" developer 6%
    range cream "Larkfield cream" permanent
    client wren-abbott "Wren Abbott"
      test skin 2026-06-01 11:00 cream read 2026-06-03 11:30 clear
    visit 2026-09-04 wren-abbott
      asked medicines "a new blood thinner"
      bowl A 40 cream 6/0 + 60 dev-6
             ^^^^^^^^^^^^`,
  good: `
    product dev-6 "Cream developer" developer 6%
    range cream "Larkfield cream" permanent
    client wren-abbott "Wren Abbott"
      test skin 2026-06-01 11:00 cream read 2026-06-03 11:30 clear
    visit 2026-09-04 wren-abbott
      asked medicines no
      bowl A 40 cream 6/0 + 60 dev-6`,
});
