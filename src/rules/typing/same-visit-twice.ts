import type { Journal } from '../../journal/journal.ts';
import type { Stood } from '../../journal/source.ts';
import { spokenLines } from '../../journal/where.ts';
import { placeOf } from '../../reckon/cite.ts';
import type { VisitReckoned } from '../../reckon/model.ts';
import { lineName, sentence } from '../../text/sentence.ts';
import { defineRule } from '../rule.ts';

/** What two visits of a day have alike that stand twice. */
const keyOf = (journal: Journal, { visit }: VisitReckoned): string =>
  `${visit.entry.time?.minutes}\n${plain(journal, visit)}`;

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
  over: 'client',
  what: 'A visit stands twice, with the same date and the same lines.',
  why: 'A pasted visit counts twice: in grams, in money, in what her hair has been through.',
  source: { kind: 'notation' },
  *check(_, visits, journal) {
    let ofDay = new Map<string, VisitReckoned>();
    for (const [index, visit] of visits.entries()) {
      // Visits are in order of their dates, and most stand alone on theirs.
      const isFirst = visits[index - 1]?.date !== visit.date;
      if (isFirst) ofDay = new Map();
      if (isFirst && visits[index + 1]?.date !== visit.date) continue;
      const key = keyOf(journal, visit);
      const first = ofDay.get(key);
      if (first === undefined) {
        ofDay.set(key, visit);
        continue;
      }
      const stands = placeOf(first.visit, { line: 0 }, first.visit.entry.date?.at);
      yield {
        place: placeOf(visit.visit, { line: 0 }, visit.visit.entry.date?.at),
        message: sentence`The visit of ${visit.date} stands twice with the same lines, first at ${lineName(stands)}.`,
        todo: 'Take one of the two out.',
        also: [{ place: stands, says: 'stands here too' }],
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
