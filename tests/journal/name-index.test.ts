import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { joinSources } from '../../src/journal/journal.ts';
import { createNameIndex, type NamedPlace } from '../../src/journal/name-index.ts';
import { readSource, rereadSource, type Source } from '../../src/journal/source.ts';
import { type Files, whereIs } from '../../src/journal/where.ts';
import type { Namespace } from '../../src/records/schema/values.ts';
import { judge } from '../../src/rules/judging.ts';
import { applyEdits } from '../../src/text/edit.ts';
import { demoSources } from './demo.ts';

const SOURCES = demoSources();

const indexOf = (sources: readonly Source[]) => {
  const index = createNameIndex();
  for (const source of sources) index.put(source.path, source);
  return index;
};

/** Every place of a name in some files, as file, line and run, and whether it gives the name. */
const shown = (journal: Files, places: readonly NamedPlace[]): string[] =>
  places.map((place) => {
    const { file, line, at } = whereIs(journal, place);
    return `${file} ${line} ${at} ${place.gives}`;
  });

const NAMES: readonly (readonly [string, Namespace])[] = [
  ['dev-6', 'product'],
  ['marlo-fenwick', 'client'],
  ['skin-test-missing', 'rule'],
  ['nia', 'stylist'],
];

describe('the index of names', () => {
  test('has every place of a name, and one that gives it', () => {
    const places = indexOf(SOURCES).placesOf('dev-6', 'product');
    expect(places.length).toBeGreaterThan(50);
    expect(places.filter(({ gives }) => gives)).toHaveLength(1);
    expect(indexOf(SOURCES).placesOf('dev-6', 'stylist')).toEqual([]);
  });

  test('a name changed at all its places changes no finding but by the name', () => {
    const journal = joinSources(SOURCES);
    const edits = indexOf(SOURCES)
      .placesOf('dev-6', 'product', 'held', 'part-name')
      .map((place) => ({ place: whereIs(journal, place), put: 'zz-6' }));
    const renamed = SOURCES.map((source) =>
      readSource(source.path, Buffer.from(applyEdits(source.path, source.lines, edits).join('\n'))),
    );
    const rulesIn = (sources: readonly Source[]): string[] =>
      judge(joinSources(sources), '2026-09-10')
        .all()
        .findings.map(({ rule, place: { file, line } }) => `${rule} ${file} ${line}`);
    expect(rulesIn(renamed)).toEqual(rulesIn(SOURCES));
    expect(indexOf(renamed).placesOf('dev-6', 'product', 'held', 'part-name')).toEqual([]);
  });

  test('after edits at random it is as one made anew', () => {
    const change = fc.record({
      file: fc.nat(),
      line: fc.nat(),
      kind: fc.constantFrom('drop', 'twice', 'blank', 'away'),
    });
    fc.assert(
      fc.property(fc.array(change, { minLength: 1, maxLength: 6 }), fc.boolean(), (changes, isAskedBetween) => {
        const now = new Map(SOURCES.map((source) => [source.path, source]));
        const index = indexOf(SOURCES);
        for (const { file, line, kind } of changes) {
          const source = SOURCES[file % SOURCES.length] as Source;
          const before = now.get(source.path);
          if (isAskedBetween) index.placesOf('dev-6', 'product');
          if (kind === 'away' || before === undefined) now.delete(source.path);
          else {
            const lines = [...before.lines];
            const at = line % Math.max(1, lines.length);
            lines.splice(
              at,
              kind === 'blank' ? 0 : 1,
              ...{ drop: [], twice: [lines[at] ?? '', ''], blank: [''] }[kind],
            );
            now.set(source.path, rereadSource(before, Buffer.from(lines.join('\n'))));
          }
          index.put(source.path, now.get(source.path));
        }
        const sources = [...now.values()];
        const [anew, files] = [indexOf(sources), { sources: now }];
        for (const [name, of] of NAMES)
          expect(shown(files, index.placesOf(name, of))).toEqual(shown(files, anew.placesOf(name, of)));
      }),
      { seed: 20_261_201, numRuns: 25 },
    );
  });
});
