import { bowlsPutOn } from '../../reckon/bowl/applied.ts';
import { itemsIn, placeInBowl } from '../../reckon/bowl/contents.ts';
import { isLightening, type TestMade, testsOfFibre, zonesOfBowl } from '../../reckon/client/state.ts';
import { anyMeet } from '../../reckon/head/hair-meets.ts';
import type { VisitReckoned } from '../../reckon/model.ts';
import { failureIn } from '../../reckon/testing/test-result.ts';
import { daysBetween } from '../../text/dates.ts';
import { weakWord } from '../../trade/condition.ts';
import { isAdverse } from '../../trade/hair.ts';
import { CONDITION_HOLDS } from '../../trade/intervals.ts';
import { defineRule, type Found, NONE } from '../rule.ts';

/** What a test of the fibre says against going on; undefined where it does not. */
const against = ({ result, fact, reading }: TestMade): string | undefined => {
  if (result === 'adverse') {
    const words = reading.result.flatMap((seen) => seen.words.map(({ word }) => word));
    return failureIn(reading) ?? words.find(isAdverse) ?? words.join(' ');
  }
  return result === undefined && fact.says !== undefined ? weakWord(fact.says.text) : undefined;
};

const foundIn = (visit: VisitReckoned): Found | undefined => {
  const { client, date, salon } = visit;
  const isLately = ({ made }: TestMade): boolean =>
    made !== undefined && made.date !== '' && made.date <= date && daysBetween(made.date, date) <= CONDITION_HOLDS;
  const tests = testsOfFibre(client, salon.hours, date);
  for (const [index, test] of tests.entries()) {
    const says = isLately(test) ? against(test) : undefined;
    if (says === undefined) continue;
    // A later test of the kind at the same hair outweighs it, once something was seen.
    const settled = tests
      .slice(index + 1)
      .some(
        (later) =>
          later.kind === test.kind &&
          isLately(later) &&
          isSeen(later) &&
          anyMeet(namedBy(later), namedBy(test), salon.zones),
      );
    const bowl = bowlsPutOn(visit).find(
      (one) =>
        isLightening(one) &&
        anyMeet(zonesOfBowl(visit, one.name), namedBy(test), salon.zones) &&
        (test.products.length === 0 || itemsIn(one).some(({ name }) => test.products.includes(name))),
    );
    if (settled || bowl === undefined) continue;
    return {
      place: placeInBowl(bowl, ({ item }) => item?.kind === 'lightener' || item?.kind === 'high-lift'),
      message: `Bowl ${bowl.name} lightens hair whose ${test.kind} test of ${test.made?.date} says "${says}".`,
      expected: 'A strand that goes gummy, breaks or stays stretched speaks against lightening (common practice).',
      todo: `Write the zones it really went on or a ${test.kind} test made since; if it went on, \`hold lightener 12w\` and why: \`because adverse-test "…"\`.`,
      label: `tested: ${says}`,
      also: [{ place: test.place, says: 'the test' }],
    };
  }
  return undefined;
};

const isSeen = ({ result, fact }: TestMade): boolean =>
  result !== undefined || (!fact.notNeeded && fact.says !== undefined);

const namedBy = ({ fact }: TestMade): readonly string[] => fact.zones.map(({ zone }) => zone);

export default defineRule({
  name: 'adverse-test',
  family: 'condition',
  severity: 'stop',
  bears: 'always',
  over: 'visit',
  looksAt: { kinds: ['lightener', 'high-lift'] },
  what: 'Hair is lightened whose last strand, stretch or porosity test went gummy, broke or stayed stretched, in words quoted or not.',
  why: 'The test was made to see what the head would do, and it said that the hair would go.',
  source: { kind: 'common practice' },
  caution: 'lightener',
  check: (visit) => {
    const found = foundIn(visit);
    return found === undefined ? NONE : [found];
  },
  bad: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      test stretch ends breaks
      bowl A 40 clay + 80 dev-6
             ^^^^^^^
      place A ends`,
  good: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
      scalp to 6%
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      test stretch ends breaks
      bowl A 40 clay + 80 dev-6
      place A roots on-scalp`,
});
