import { defineRule, NONE } from '../rule.ts';
import { type Tested, testedAt } from '../skin-tests.ts';

const isDecided = ({ standing }: Tested): boolean => standing.status === 'not-needed';

export default defineRule({
  name: 'skin-test-decision',
  family: 'testing',
  severity: 'mind',
  bears: 'that-day',
  over: 'visit',
  what: 'Oxidative colour was put on, and the note says that no skin test was needed.',
  why: 'The decision is kept with its reason; the maker’s leaflet and the insurer may ask for a test all the same.',
  source: { kind: 'policy', cites: 'its `policy skin-test` line; the maker’s leaflet and the insurer come first' },
  caution: 'skin-test',
  check: (visit) => {
    const tested = testedAt(visit);
    const test = tested.find(isDecided)?.standing.test;
    if (test === undefined) return NONE;
    const decided = tested.filter(isDecided);
    const why = test.fact.says === undefined ? 'without a reason' : `"${test.fact.says.text}"`;
    return [
      {
        place: test.place,
        message: `${decided.map(({ standing }) => standing.product).join(', ')} without a skin test, by decision: ${why}.`,
        todo:
          test.fact.says === undefined
            ? 'Write the reason in quotation marks after `not-needed`.'
            : 'Nothing, if the leaflet and the insurer agree.',
        label: 'decided',
      },
    ];
  },
  bad: `
    product dev-6 "Cream developer" developer 6%
    range cream "Larkfield cream" permanent
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      test skin not-needed "same range as in spring"
           ^^^^
      bowl A 20 cream 7/0 + 30 dev-6`,
  good: `
    product dev-6 "Cream developer" developer 6%
    range cream "Larkfield cream" permanent
    client wren-abbott "Wren Abbott"
      test skin 2026-09-01 11:00 cream read 2026-09-03 11:30 clear
    visit 2026-09-04 wren-abbott
      bowl A 20 cream 7/0 + 30 dev-6`,
});
