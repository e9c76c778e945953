import { describe, expect, test } from 'vitest';
import { namesIn } from '../../src/journal/named.ts';
import { readSource } from '../../src/journal/source.ts';
import { recordLines } from '../../src/journal/where.ts';
import { fold } from '../../src/text/fold.ts';
import { sliceOf } from '../../src/text/span.ts';
import { demoSources } from './demo.ts';

const DEMO = demoSources();

/** Every value of a record that has the shape of a name, a zone or a lot, by its place in its line. */
const shaped = (value: unknown, line: number): string[] => {
  if (Array.isArray(value)) return value.flatMap((one) => shaped(one, line));
  if (typeof value !== 'object' || value === null) return [];
  const own = value as { [key: string]: unknown };
  const at = typeof own.line === 'number' ? own.line : line;
  const text = own.name ?? own.zone;
  if (typeof text === 'string' && typeof own.at === 'number') return [`${at} ${own.at} ${text}`];
  return Object.entries(own).flatMap(([key, inner]) =>
    key === 'lot' && typeof inner === 'object'
      ? [`${at} ${(inner as { at: number }).at} ${(inner as { text: string }).text}`]
      : shaped(inner, at),
  );
};

describe('the names of an entry', () => {
  test('are all its values with the shape of a name, in every entry of the demo', () => {
    let seen = 0;
    for (const { entries } of DEMO)
      for (const { entry } of entries) {
        const named = namesIn(entry).map(({ line, at, name }) => `${line} ${at} ${name}`);
        expect(named.toSorted()).toEqual(shaped(entry, 0).toSorted());
        seen += named.length;
      }
    expect(seen).toBeGreaterThan(5000);
  });

  test('stand where they say, and read there as they say', () => {
    for (const source of DEMO)
      for (const [index, { entry }] of source.entries.entries()) {
        const standing = source.standing[index];
        if (standing === undefined) throw new Error('an entry stands nowhere');
        const lines = recordLines(source, standing);
        for (const { line, at, name, of } of namesIn(entry)) {
          const typed = fold(sliceOf(lines[line] ?? '', at));
          // A zone has one name and may be typed in many ways, a lot may stand in quotation marks.
          if (of !== 'zone' && of !== 'lot') expect(typed).toBe(name);
          else expect(typed).not.toBe('');
        }
      }
  });

  test('of one thing are those of all that are of it', () => {
    const all = DEMO.flatMap(({ entries }) => entries.map(({ entry }) => entry));
    for (const of of ['product', 'stylist', 'salon', 'client', 'zone', 'bowl', 'lot', 'rule'] as const) {
      const some = all.map((entry) => namesIn(entry, of));
      expect(some).toEqual(all.map((entry) => namesIn(entry).filter((named) => named.of === of)));
      expect(some.flat().length, of).toBeGreaterThan(0);
    }
  });

  test('say which line gives a name, and which uses it', () => {
    const text = 'visit 2026-03-02 tove\n  bowl A 30 cream + 60 dev-6\n  plus A 5 clay\n  bowl B 10 from A\n';
    const [stood] = readSource('one.bowl', Buffer.from(text)).entries;
    if (stood === undefined) throw new Error('nothing is read');
    const said = namesIn(stood.entry, 'bowl').map(({ name, line, gives }) => [name, line, gives]);
    expect(said).toEqual([
      ['a', 1, true],
      ['a', 2, false],
      ['b', 3, true],
      ['a', 3, false],
    ]);
  });
});
