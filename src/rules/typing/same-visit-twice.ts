import type { Journal } from '../../journal/journal.ts';
import type { Stood } from '../../journal/source.ts';
import { lineAt, lineName, placeOf } from '../../reckon/cite.ts';
import type { VisitReckoned } from '../../reckon/model.ts';
import { defineRule } from '../rule.ts';

const dayOf = ({ visit, date }: VisitReckoned): string => `${date} ${visit.entry.time?.minutes}`;

/** The lines of an entry, white space, blank lines and capitals apart. */
const plain = (journal: Journal, { file, line, end }: Stood): string =>
  Array.from({ length: end - line }, (_, index) => lineAt(journal, { file, line: line + index }))
    .map((text) => text.replace(/\s+/g, '').toLowerCase())
    .filter((text) => text !== '')
    .join('\n');

export default defineRule({
  name: 'same-visit-twice',
  family: 'typing',
  severity: 'fix',
  bears: 'never',
  over: 'client',
  what: 'A visit stands twice, with the same date and the same lines.',
  why: 'A pasted visit counts twice: in grams, in money, in what her hair has been through.',
  source: { kind: 'notation' },
  *check(_, visits, journal) {
    for (const [index, visit] of visits.entries()) {
      // Visits are in order of their dates.
      if (visits[index - 1]?.date !== visit.date) continue;
      const earlier = visits.slice(0, index).filter((one) => dayOf(one) === dayOf(visit));
      const first = earlier.find((one) => plain(journal, one.visit) === plain(journal, visit.visit));
      if (first === undefined) continue;
      const { file, line, entry } = first.visit;
      yield {
        place: placeOf(visit.visit, { line: 0 }, visit.visit.entry.date?.at),
        message: `The visit of ${visit.date} stands twice with the same lines, first at ${lineName(file, line)}.`,
        todo: 'Take one of the two out.',
        also: [{ place: placeOf(first.visit, { line: 0 }, entry.date?.at), says: 'stands here too' }],
      };
    }
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
