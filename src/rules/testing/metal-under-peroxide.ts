import { bowlsPutOn } from '../../reckon/bowl/applied.ts';
import { hasPeroxide, placeInBowl, portionsIn } from '../../reckon/bowl/contents.ts';
import { isCutOff } from '../../reckon/client/cut-off.ts';
import type { Moment, TestMade } from '../../reckon/client/state.ts';
import { cautionsOn, stillHanging, testsOfKind } from '../../reckon/client/state.ts';
import type { VisitReckoned } from '../../reckon/model.ts';
import { firstDayOf } from '../../reckon/when.ts';
import type { Place } from '../../text/span.ts';
import { historyFacts, isHistory } from '../../trade/hair.ts';
import { hennaTold, metalTold } from '../../trade/metal.ts';
import { defineRule, type Found } from '../rule.ts';
import { dayNamed, historySaid, lastNamed, notesSaid } from '../said-on-file.ts';

/** What speaks for metal in the hair: a word of the history, or a test. */
type Suspicion = { readonly says: string; readonly date: string; readonly place: Place; readonly stop: boolean };

type Said = { readonly text: string; readonly place: Place; readonly from: string };

const tells = (text: string): boolean => metalTold(text) !== undefined || hennaTold(text) !== undefined;

/** What may bear on metal in free text up to a visit, with the day it is of, '' where nothing tells. */
const saidUpTo = ({ client, date }: VisitReckoned): readonly (Said & { readonly where: string })[] => [
  ...historySaid(client, date).map(({ text, place }) => ({ text, place, from: '', where: 'the history has' })),
  ...cautionsOn(date, client).map(({ text, place }) => ({ text, place, from: '', where: 'a caution has' })),
  ...notesSaid(client, date, tells).map((note) => ({ ...note, where: 'a note has' })),
];

/** What free text says of metal: named, it is a stop; by one sign, or by henna, a fix. */
const inWords = (visit: VisitReckoned): Suspicion[] =>
  saidUpTo(visit).flatMap(({ text, place, from, where }): Suspicion[] => {
    const metal = metalTold(text);
    const says = metal?.says ?? (where === 'the history has' ? undefined : hennaTold(text));
    if (says === undefined || (where === 'the history has' && isCutOff(visit, lastNamed(text)))) return [];
    return [{ says: `${where} ${says}`, date: dayNamed(text) ?? from, place, stop: metal?.sure === true }];
  });

const knownAt = ({ read, made }: TestMade): Moment | undefined => read ?? made;

const suspicionsOf = (visit: VisitReckoned, tests: readonly TestMade[]): Suspicion[] =>
  suspected(visit, tests).concat(inWords(visit));

const suspected = (visit: VisitReckoned, tests: readonly TestMade[]): Suspicion[] => [
  ...stillHanging(visit).flatMap(({ kind, when, place }): Suspicion[] => {
    if (!isHistory(kind) || !historyFacts(kind).metal) return [];
    const first = when === undefined ? '' : firstDayOf(when);
    const says = when === undefined ? kind : `${kind} in ${when}`;
    return [{ says: `the history has ${says}`, date: first, place, stop: kind === 'metallic' }];
  }),
  ...tests.flatMap((test): Suspicion[] => {
    const known = knownAt(test);
    if (test.result !== 'adverse' || known === undefined || known.date > visit.date) return [];
    return [
      { says: `the metal test of ${known.date} showed a reaction`, date: known.date, place: test.place, stop: true },
    ];
  }),
];

/** Whether anything is noted of a client that could speak for metal. */
const mayHoldMetal = ({ entries, visits }: VisitReckoned['client']): boolean =>
  [...entries, ...visits].some(({ entry }) =>
    entry.facts.some(
      (fact) =>
        fact.word === 'history' ||
        fact.word === 'caution' ||
        fact.word === 'note' ||
        fact.word === 'asked' ||
        (fact.word === 'test' && fact.test.name === 'metal'),
    ),
  );

function* found(visit: VisitReckoned): Generator<Found> {
  const bowl = bowlsPutOn(visit).find(hasPeroxide);
  if (bowl === undefined) return;
  const tests = testsOfKind(visit.client, visit.salon.hours, 'metal', visit.date);
  const clear = tests.filter(({ result }) => result === 'clear').map((test) => knownAt(test)?.date ?? '');
  // A clear test speaks for everything that was on the hair when it was made.
  const open = suspicionsOf(visit, tests).filter(({ date }) => !clear.some((day) => day >= date && day <= visit.date));
  const [first] = open.toSorted((a, b) => Number(b.stop) - Number(a.stop));
  if (first === undefined) return;
  const developer = portionsIn(bowl).find(({ role }) => role === 'developer')?.label;
  yield {
    place: placeInBowl(bowl, ({ role }) => role === 'developer'),
    severity: first.stop ? 'stop' : 'fix',
    message: `Bowl ${bowl.name} has peroxide, and ${first.says}; no clear metal test follows it.`,
    expected:
      'A cutting is tested away from the head first (common practice; a hairdressing page, "Incompatibility test").',
    todo: `Write the test that was made, as in \`test metal 40 ${developer} + 2 ammonia clear\`; if none was, it comes before the next visit, and why this went on: \`because metal-under-peroxide "…"\`.`,
    label: 'peroxide',
    also: [{ place: first.place, says: 'metal may be here' }],
  };
}

export default defineRule({
  name: 'metal-under-peroxide',
  family: 'testing',
  severity: 'stop',
  bears: 'always',
  over: 'client',
  what: 'Peroxide is used on hair that may hold metal, with no clear metal test since, by what history, notes and cautions say; `fix` where only henna or one sign of metal (its smell, hair that darkens every day) says so.',
  why: 'Metal salts and peroxide can heat the hair until it breaks, and burn the skin under it.',
  source: { kind: 'published', cites: 'a hairdressing page, "Incompatibility test"' },
  caution: 'metallic',
  *check(client, visits) {
    if (mayHoldMetal(client)) for (const visit of visits) yield* found(visit);
  },
  bad: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
    client wren-abbott "Wren Abbott"
      history 2026-03 metallic lengths
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-6
                       ^^^^^^^^`,
  good: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
    client wren-abbott "Wren Abbott"
      history 2026-03 metallic lengths
    visit 2026-09-04 wren-abbott
      test metal 40 dev-6 clear
      bowl A 40 clay + 80 dev-6`,
});
