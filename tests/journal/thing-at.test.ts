import { describe, expect, test } from 'vitest';
import { entryIdentity, factIdentity } from '../../src/journal/identity.ts';
import { joinSources } from '../../src/journal/journal.ts';
import { namesIn } from '../../src/journal/named.ts';
import { readSource, rereadSource } from '../../src/journal/source.ts';
import { factAt, thingAt } from '../../src/journal/thing-at.ts';
import { whereIs } from '../../src/journal/where.ts';
import { fromOf, toOf } from '../../src/text/span.ts';
import { demoSources } from './demo.ts';

const read = (text: string) => readSource('t.bowl', Buffer.from(text));
const NOTES = `
# above
product dev-6 developer 6%
  pack 1 kg 7.50

visit 2026-03-02 14:00 tove by nia
  bowl A 30 cream + 60 dev-6
  on 14:10 A roots
`;

describe('what stands at a place of a file', () => {
  const nameAt = (row: number, column: number) => thingAt(read(NOTES), row, column);

  test('is the entry, the fact and the name', () => {
    expect(nameAt(5, 24)).toMatchObject({ line: 0, named: { of: 'client', name: 'tove' } });
    expect(nameAt(6, 23)).toMatchObject({ line: 1, fact: { word: 'bowl' }, named: { of: 'product', name: 'dev-6' } });
    expect(nameAt(6, 7)).toMatchObject({ named: { of: 'bowl', name: 'a', gives: true } });
    expect(nameAt(7, 13)).toMatchObject({ named: { of: 'zone', name: 'roots' } });
  });

  test('is no name between names, no fact at a header, and nothing above the first entry', () => {
    expect(nameAt(6, 11)?.named).toBeUndefined();
    expect(nameAt(5, 0)).toMatchObject({ line: 0 });
    expect(nameAt(5, 0)?.fact).toBeUndefined();
    expect(nameAt(0, 0)?.stood.entry.kind).not.toBe('product');
    expect(thingAt(read(''), 3, 0)).toBeUndefined();
    expect(nameAt(400, 0)).toBeUndefined();
  });

  test('is found where comments came between the lines of a record', () => {
    const before = read(NOTES);
    const now = rereadSource(before, Buffer.from(NOTES.replace('developer 6%\n', 'developer 6%\n  # a remark\n')));
    expect(now.entries.map((stood) => before.entries.includes(stood))).toEqual(before.entries.map(() => true));
    expect(thingAt(now, 3, 4)).toEqual({ stood: thingAt(now, 2, 0)?.stood });
    expect(thingAt(now, 4, 3)).toMatchObject({ line: 1, fact: { word: 'pack' } });
  });

  test('is every name of the demo at its own place', () => {
    const sources = demoSources();
    const journal = joinSources(sources);
    for (const source of sources)
      for (const stood of source.entries)
        for (const named of namesIn(stood.entry)) {
          const { line, at } = whereIs(journal, { in: stood, line: named.line, at: named.at });
          const thing = thingAt(source, line, fromOf(at) + 1 > toOf(at) ? fromOf(at) : fromOf(at) + 1);
          expect(thing?.stood).toBe(stood);
          expect(thing?.fact).toBe(factAt(stood.entry, named.line));
          expect(thing?.named?.name).toBeDefined();
        }
  }, 60_000);
});

describe('identity', () => {
  test('a visit is its client, day and time; a line its word, bowls and places', () => {
    const [, , visit] = [undefined, ...read(NOTES).entries.filter(({ entry }) => entry.kind !== 'orphan')];
    if (visit === undefined) throw new Error('no visit is read');
    expect(entryIdentity(visit)).toBe('visit tove 2026-03-02 14:00');
    expect(visit.entry.facts.map(factIdentity)).toEqual(['bowl A', 'on A roots']);
  });

  test('no two entries of the demo have one', () => {
    const all = demoSources().flatMap(({ entries }) => entries.filter(({ entry }) => entry.kind !== 'orphan'));
    expect(new Set(all.map(entryIdentity)).size).toBe(all.length);
  });

  test('it stays while lines move and figures change', () => {
    const other = `# more\n${NOTES.replace('30 cream', '31 cream').replace('14:10', '14:12')}`;
    const of = (text: string) =>
      read(text).entries.flatMap((stood) => [entryIdentity(stood), ...stood.entry.facts.map(factIdentity)]);
    expect(of(other)).toEqual(of(NOTES));
  });
});
