import type { Journal } from '../../journal/journal.ts';
import type { Stood } from '../../journal/source.ts';
import type { Visit } from '../../records/schema/entry.ts';
import { lineName, placeOf } from '../cite.ts';
import { defineRule } from '../rule.ts';

const dayOf = ({ entry }: Stood<Visit>): string => `${entry.date?.date} ${entry.time?.minutes}`;

/** The lines of an entry, white space, blank lines and capitals apart. */
const plain = ({ sources }: Journal, { file, line, end }: Stood): string =>
  (sources.get(file)?.lines.slice(line, end) ?? [])
    .map((text) => text.replace(/\s+/g, '').toLowerCase())
    .filter((text) => text !== '')
    .join('\n');

export default defineRule({
  name: 'same-visit-twice',
  family: 'typing',
  severity: 'fix',
  over: 'client',
  what: 'A visit stands twice, with the same date and the same lines.',
  why: 'A pasted visit counts twice: in grams, in money, in what her hair has been through.',
  source: { kind: 'notation' },
  *check(client, _, journal) {
    for (const [index, visit] of client.visits.entries()) {
      const earlier = client.visits.slice(0, index).filter((one) => dayOf(one) === dayOf(visit));
      const first = earlier.find((one) => plain(journal, one) === plain(journal, visit));
      if (first === undefined) continue;
      yield {
        place: placeOf(visit, { line: 0 }, visit.entry.date?.at),
        message: `The visit of ${visit.entry.date?.date} stands twice with the same lines, first at ${lineName(first.file, first.line)}.`,
        todo: 'Take one of the two out.',
        also: [{ place: placeOf(first, { line: 0 }, first.entry.date?.at), says: 'stands here too' }],
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
