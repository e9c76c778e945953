import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { startDrawing } from '../../src/cli/watch/draw.ts';
import { joinSources } from '../../src/journal/journal.ts';
import { readSource } from '../../src/journal/source.ts';
import { RULES } from '../../src/rules/all.ts';
import { EXAMPLE_DAY, readExample } from '../../src/rules/example.ts';
import { judge } from '../../src/rules/judging.ts';
import { openSession } from '../../src/rules/session.ts';

const bytes = (lines: readonly string[]): Buffer => Buffer.from(lines.join('\n'));

const coldOf = (files: ReadonlyMap<string, readonly string[]>, on: string) => {
  const journal = joinSources([...files].map(([path, lines]) => readSource(path, bytes(lines))));
  const { findings, answered } = judge(journal, on).all();
  return { findings, answered };
};

describe('a rule finds the same while its notes are typed as in the notes', () => {
  test.each(RULES.map((rule) => [rule.name, rule] as const))('%s, line by line', (_name, rule) => {
    const { lines } = readExample(rule.bad);
    const session = openSession();
    const look = (now: readonly string[]): void => {
      session.put('example.bowl', bytes(now));
      expect(session.settle(EXAMPLE_DAY).all()).toEqual(coldOf(new Map([['example.bowl', now]]), EXAMPLE_DAY));
    };
    for (let count = 1; count <= lines.length; count++) look(lines.slice(0, count));
    look(['# a line above', '', ...lines]);
  });
});

const SHELF = [
  'salon quay "Quay"',
  '  money GBP',
  'stylist io "Io" at quay',
  'stylist nia "Nia" at quay',
  'product dev-6 "Cream developer" developer 6%',
  '  pack 1 l 7.50',
  'product clay "Peregrine clay" lightener',
  '  mix 1:2',
  '  time 20-40 min from first-on',
  'range cream "Larkfield cream" permanent',
  '  mix 1:1.5',
  '  time 30-45 min from all-on',
  'stock 2026-08-01',
  '  in clay 2 pack lot K1',
];
const WREN = [
  'client wren "Wren"',
  'visit 2026-09-04 10:00 wren by io',
  '  bowl A 40 clay lot K1 + 20vol 1:2',
  '  on 10:00-10:20 A top',
  '  off 10:45 A',
];
const INES = [
  'client ines "Ines"',
  'visit 2026-09-04 10:10 ines by io',
  '  again A from wren 2026-09-04 A',
  '  on 10:10-10:30 A top',
  '  off 11:00 A',
  'visit 2026-10-04 10:10 ines by nia',
  '  again A from orla 2026-10-01 A',
];
const ORLA = [
  'client orla "Orla"',
  'visit 2026-10-01 12:00 orla by nia',
  '  again A from ines 2026-09-04 A',
  '  bowl B 30 cream 6/0 + 45 dev-6',
];
const FILES: readonly (readonly [string, readonly string[]])[] = [
  ['/notes/a.bowl', [...WREN, '', ...INES]],
  ['/notes/b.bowl', ORLA],
  ['/notes/shelf.bowl', SHELF],
];

const TYPED = [
  '',
  '# a comment',
  '  bowl A 60 clay + 120 dev-6',
  '  again A from wren 2026-09-04 A',
  '  again B from ines A',
  '  on 10:05-10:25 A top',
  '  by nia',
  '  mix 1:3',
  '  pack 500 g 24.00',
  'product clay-2 "Second clay" lightener',
  'stylist bo "Bo" at quay',
  'client wrenn "Wrenn"',
  'visit 2026-09-05 wren by bo',
  '  policy rule ratio-off-mix off "as we do"',
  '  out clay 1 pack lot K1 "recalled"',
  '  hold lightener 12w',
];

describe('clients who bear on each other', () => {
  test('are found and drawn after any edits as they are anew', () => {
    const edit = fc.record({ file: fc.nat(2), kind: fc.nat(3), line: fc.nat(40), what: fc.nat() });
    fc.assert(
      fc.property(fc.array(edit, { minLength: 1, maxLength: 10 }), (edits) => {
        const files = new Map(FILES);
        const session = openSession();
        const drawing = startDrawing('/notes');
        const pages = new Map<string, string | undefined>();
        const draw = (): ReturnType<typeof session.settle> => {
          const settled = session.settle('2026-11-25');
          const { draw: names, gone } = drawing.take(settled, '2026-11-25');
          for (const file of gone) pages.delete(file);
          const filesOf = new Set(drawing.files());
          for (const file of filesOf) if (names.includes(file)) pages.set(file, drawing.page(file));
          return settled;
        };
        for (const [path, lines] of files) session.put(path, bytes(lines));
        draw();
        for (const { file, kind, line, what } of edits) {
          const [path] = FILES[file % FILES.length] as (typeof FILES)[number];
          const lines = files.get(path) ?? [];
          const at = line % (lines.length + 1);
          const typed = TYPED[what % TYPED.length] as string;
          const now =
            kind === 0
              ? lines.toSpliced(at, 1)
              : kind === 1
                ? lines.with(Math.min(at, lines.length - 1), typed)
                : lines.toSpliced(at, 0, typed);
          if (now.length === 0) continue;
          files.set(path, now);
          session.put(path, bytes(now));
          expect(draw().all()).toEqual(coldOf(files, '2026-11-25'));
          const anew = startDrawing('/notes');
          const fresh = openSession();
          for (const [one, own] of files) fresh.put(one, bytes(own));
          anew.take(fresh.settle('2026-11-25'), '2026-11-25');
          expect([...pages.keys()].sort()).toEqual([...anew.files()].sort());
          for (const [name, page] of pages) expect(page).toBe(anew.page(name));
        }
      }),
      { numRuns: 12, seed: 13 },
    );
  });
});
