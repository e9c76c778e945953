import type { Journal } from '../../journal/journal.ts';
import { lineAt } from '../../reckon/cite.ts';
import { type TestMade, testsFor } from '../../reckon/client/state.ts';
import { isClearAgainstItself } from '../../reckon/testing/test-result.ts';
import { fromOf, type Place, sliceOf, spanOf, toOf } from '../../text/span.ts';
import { defineRule } from '../rule.ts';
import { momentText } from '../skin-tests.ts';

/** Where the words of a reading stand, with what of them is not read. */
const wordsOf = ({ reading, place, readPlace }: TestMade): Place => {
  const said = [...reading.result, ...(reading.rest === undefined ? [] : [reading.rest])].map(({ at }) => at);
  const [from, to] = [Math.min(...said.map(fromOf)), Math.max(...said.map(toOf))];
  return { ...(readPlace ?? place), at: spanOf(from, to) };
};

const typedIn = (journal: Journal, place: Place): string => sliceOf(lineAt(journal, place), place.at);

export default defineRule({
  name: 'skin-test-unclear',
  family: 'testing',
  severity: 'stop',
  bears: 'that-day',
  over: 'client',
  what: 'The reading of a skin test says neither `clear` nor `reaction`, or something beside `clear`; the test does not hold.',
  why: 'Redness or itching may be the reaction the test is made to show, so other words settle nothing.',
  source: {
    kind: 'published',
    cites: 'Regulation (EC) 1223/2009, Annex III, label warnings of the oxidative hair dyes',
  },
  caution: 'skin-test',
  *check(client, visits, journal) {
    const { hours } = visits[0]?.salon ?? journal.salon;
    for (const test of testsFor(client, hours)) {
      // One read as clear whose remark tells of a reaction is found as such.
      if (test.kind !== 'skin' || test.result !== 'other' || isClearAgainstItself(test.reading)) continue;
      const place = wordsOf(test);
      const of = test.made === undefined ? '' : ` of ${momentText(test.made)}`;
      yield {
        place,
        message: `The reading of the skin test${of} says \`${typedIn(journal, place)}\`; it does not settle the test.`,
        todo: 'Write `clear` or `reaction`, then the words in quotation marks.',
        label: 'clear or reaction',
      };
    }
  },
  bad: `
    range cream "Larkfield cream" permanent
    client wren-abbott "Wren Abbott"
      test skin 2026-09-01 11:00 cream read 2026-09-03 11:30 red and itchy
                                                             ^^^^^^^^^^^^^`,
  good: `
    range cream "Larkfield cream" permanent
    client wren-abbott "Wren Abbott"
      test skin 2026-09-01 11:00 cream read 2026-09-03 11:30 reaction "red and itchy"`,
});
