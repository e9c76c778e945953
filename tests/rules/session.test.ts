import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findFiles } from '../../src/journal/find.ts';
import { type Journal, joinSources } from '../../src/journal/journal.ts';
import { readSource } from '../../src/journal/source.ts';
import { rowOf } from '../../src/journal/where.ts';
import { RULES } from '../../src/rules/all.ts';
import { EXAMPLE_DAY } from '../../src/rules/example.ts';
import { judge } from '../../src/rules/judging.ts';
import { openSession } from '../../src/rules/session.ts';
import { FILE, findIn, textOf } from './compile.ts';

const DEMO = findFiles('journals/harbour-row').map((path) => [path, readFileSync(path, 'utf8')] as const);
/** Some files of the demo: the shelf, two clients, a month of several clients. */
const FILES = DEMO.filter(([path]) => /salon|colour|rest|wren|beth|nia-2025-1|m-to-z/.test(path));

const cold = (files: ReadonlyMap<string, string>, on: string) => {
  const journal = joinSources([...files].map(([path, text]) => readSource(path, Buffer.from(text))));
  return { journal, ...judge(journal, on).all() };
};

/** Every record, with the lines of the file that its own stand on. */
const standing = (journal: Journal): readonly string[][] =>
  [...journal.sources.values()].map(({ entries }) =>
    entries.map((stood) =>
      JSON.stringify([stood.entry, stood.notices], (key, value: unknown) =>
        key === 'line' && typeof value === 'number' ? rowOf(journal, { in: stood, line: value }) : value,
      ),
    ),
  );

type Edit = { readonly path: number; readonly kind: number; readonly line: number; readonly text: number };
const LINES = [
  '  left A 90 binned',
  '  note "x"',
  'visit 2026-02-03 10:00 wren-abbott by io',
  'client beth-tarn',
  '  again A from wren-abbott 2026-07-10 A',
  '  hold lightener',
  '  mix 1:3',
  'client wren-abbot "Other"',
  '',
  'product clay "Second clay" lightener',
  '<<<<<<< here',
  '  because said-twice "so"',
];

const apply = (files: Map<string, string>, edit: Edit): string => {
  const [path, original] = FILES[edit.path % FILES.length] as readonly [string, string];
  const text = files.get(path);
  if (text === undefined) {
    files.set(path, original);
    return path;
  }
  const lines = text.split('\n');
  const at = edit.line % (lines.length + 1);
  const line = LINES[edit.text % LINES.length] ?? '';
  if (edit.kind === 0) files.delete(path);
  else if (edit.kind < 4) files.set(path, lines.toSpliced(at, 0, line).join('\n'));
  else if (edit.kind < 6) files.set(path, lines.toSpliced(at, 1).join('\n'));
  else if (edit.kind === 6) files.set(path, original);
  else files.set(path, lines.with(Math.min(at, lines.length - 1), line).join('\n'));
  return path;
};

describe('a session that is kept up to date', () => {
  it('equals a cold check after any sequence of edits, deletions and returns', () => {
    const edit = fc.record({ path: fc.nat(), kind: fc.nat(7), line: fc.nat(4000), text: fc.nat() });
    fc.assert(
      fc.property(
        fc.array(fc.array(edit, { minLength: 1, maxLength: 3 }), { minLength: 1, maxLength: 4 }),
        (rounds) => {
          const files = new Map(FILES);
          const session = openSession();
          for (const [path, text] of files) session.put(path, Buffer.from(text));
          session.settle('2026-11-25').all();
          for (const round of rounds) {
            for (const one of round) {
              const path = apply(files, one);
              const text = files.get(path);
              session.put(path, text === undefined ? undefined : Buffer.from(text));
            }
            const settled = session.settle('2026-11-25');
            const whole = cold(files, '2026-11-25');
            expect(settled.all()).toEqual({ findings: whole.findings, answered: whole.answered });
            expect([...settled.journal.sources.keys()]).toEqual([...whole.journal.sources.keys()]);
            expect(standing(settled.journal)).toEqual(standing(whole.journal));
          }
        },
      ),
      { numRuns: 12, seed: 20261125 },
    );
  });

  it('equals a cold check while the example of each rule is typed line by line', () => {
    for (const rule of RULES) {
      const lines = textOf(rule.bad).split('\n');
      const session = openSession();
      for (const end of lines.keys()) {
        const text = lines.slice(0, end + 1).join('\n');
        session.put(FILE, Buffer.from(text));
        const { findings } = session.settle(EXAMPLE_DAY).all();
        expect(findings, `${rule.name}, line ${end + 1}`).toEqual(findIn(text).findings);
      }
    }
  });

  it('works out again only the client whose visit is typed in', () => {
    const session = openSession();
    for (const [path, text] of DEMO) session.put(path, Buffer.from(text));
    session.settle();
    const [path = '', text = ''] = DEMO.find(([name]) => name.endsWith('wren-abbott.bowl')) ?? [];
    session.put(path, Buffer.from(text.replace('left A 14 binned', 'left A 15 binned')));
    expect([...session.settle().redone]).toEqual(['wren-abbott']);
  });

  it('works out again whoever has a bowl of a touched client remade', () => {
    const session = openSession();
    const put = (path: string, text: string): void => session.put(path, Buffer.from(text));
    put('a.bowl', 'client wren\nvisit 2026-01-02 wren\n  bowl A 40 clay + 80 dev-6\n');
    put('b.bowl', 'client ines\nvisit 2026-02-02 ines\n  again A from wren 2026-01-02 A\n');
    put('c.bowl', 'client orla\nvisit 2026-02-03 orla\n  bowl A 30 clay + 60 dev-6\n');
    const [ines] = session.settle().reckonedOf('ines');
    expect(ines?.bowls[0]?.mixed).toEqual({ n: 120, d: 1 });
    put('a.bowl', 'client wren\nvisit 2026-01-02 wren\n  bowl A 50 clay + 100 dev-6\n');
    const settled = session.settle();
    expect([...settled.redone].toSorted()).toEqual(['ines', 'wren']);
    expect(settled.reckonedOf('ines')[0]?.bowls[0]?.mixed).toEqual({ n: 150, d: 1 });
  });

  it('gives the findings of one client, and nothing of one who is not there', () => {
    const session = openSession();
    session.put('a.bowl', Buffer.from('client wren\nvisit 2026-01-02 wren\n  cahrge cut 40\n'));
    const settled = session.settle();
    expect(settled.foundOf('wren').map(({ rule }) => rule)).toEqual(settled.all().findings.map(({ rule }) => rule));
    expect(settled.foundOf('wren')).not.toEqual([]);
    expect([settled.foundOf('ines'), settled.reckonedOf('ines')]).toEqual([[], []]);
  });

  it('works out nothing when a comment or a blank line is typed after the last entry', () => {
    const session = openSession();
    for (const [path, text] of DEMO) session.put(path, Buffer.from(text));
    session.settle();
    const [path = '', text = ''] = DEMO.find(([name]) => name.endsWith('wren-abbott.bowl')) ?? [];
    session.put(path, Buffer.from(text));
    expect(session.settle().redone.size).toBe(0);
  });
});
