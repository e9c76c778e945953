import type { Journal } from '../../journal/journal.ts';
import type { Stood } from '../../journal/source.ts';
import { spokenLines } from '../../journal/where.ts';
import { placeOf } from '../../reckon/cite.ts';
import type { VisitReckoned } from '../../reckon/model.ts';
import { lineName, sentence } from '../../text/sentence.ts';
import { defineRule, NONE } from '../rule.ts';

const dayOf = ({ visit, date }: VisitReckoned): string => `${date} ${visit.entry.time?.minutes}`;

/** The lines of an entry, white space, blank lines, comments and capitals apart. */
const plain = (journal: Journal, stood: Stood): string =>
  spokenLines(journal, stood)
    .map((text) => text.replace(/\s+/g, '').toLowerCase())
    .join('\n');

export default defineRule({
  name: 'same-visit-twice',
  family: 'typing',
  severity: 'fix',
  bears: 'never',
  over: 'visit',
  what: 'A visit stands twice, with the same date and the same lines.',
  why: 'A pasted visit counts twice: in grams, in money, in what her hair has been through.',
  source: { kind: 'notation' },
  check(visit, { earlier, journal }) {
    // Visits are in order of their dates.
    if (earlier.at(-1)?.date !== visit.date) return NONE;
    const same = earlier.slice(earlier.findLastIndex(({ date }) => date !== visit.date) + 1);
    const own = plain(journal, visit.visit);
    const first = same.find((one) => dayOf(one) === dayOf(visit) && plain(journal, one.visit) === own);
    if (first === undefined) return NONE;
    const stands = placeOf(first.visit, { line: 0 }, first.visit.entry.date?.at);
    return [
      {
        place: placeOf(visit.visit, { line: 0 }, visit.visit.entry.date?.at),
        message: sentence`The visit of ${visit.date} stands twice with the same lines, first at ${lineName(stands)}.`,
        todo: 'Take one of the two out.',
        also: [{ place: stands, says: 'stands here too' }],
      },
    ];
  },
  bad: `
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 14:00 wren-abbott
      charge cut 42
    visit 2026-09-04 14:00 wren-abbott
          ^^^^^^^^^^
      charge cut 42`,
  good: `
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 14:00 wren-abbott
      charge cut 42`,
});
