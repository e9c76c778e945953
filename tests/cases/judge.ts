import { readdirSync, readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { joinSources } from '../../src/journal/journal.ts';
import { readSource, type Source } from '../../src/journal/source.ts';
import { judge } from '../../src/rules/judging.ts';
import type { Finding } from '../../src/text/finding.ts';

const FOLDER = 'tests/cases';

/** After every visit of the notes but the planned ones. */
const DAY = '2026-11-30';

/** What the first line of a note says: its verdict, and how loud the mistake in it ought to be. */
export type Verdict = {
  readonly name: string;
  readonly is: 'sound' | 'wrong' | 'debatable';
  readonly expected: string;
};

const read = (path: string): Source => readSource(path, readFileSync(path));

/** The salon and shelf that all notes lean on. */
const shelf = readdirSync(join(FOLDER, 'given'))
  .filter((name) => name.startsWith('0-'))
  .map((name) => read(join(FOLDER, 'given', name)));

/** The notes of a folder, in order of their names. */
export const notesIn = (folder: string): Verdict[] =>
  readdirSync(join(FOLDER, folder))
    .filter((name) => name.endsWith('.bowl') && !name.startsWith('0-'))
    .sort()
    .map((name) => {
      const [first = ''] = readFileSync(join(FOLDER, folder, name), 'utf8').split('\n');
      const [, is = '', expected = ''] = /^# (\w+) \| expected: (.*)$/.exec(first) ?? [];
      if (is !== 'sound' && is !== 'wrong' && is !== 'debatable') throw new Error(`${name} gives no verdict`);
      return { name: `${folder}/${basename(name, '.bowl')}`, is, expected };
    });

/** What is found in one note, each `severity rule` once; `mind`s only where asked for. */
export const foundIn = (name: string): { readonly loud: readonly string[]; readonly minds: readonly string[] } => {
  const path = join(FOLDER, `${name}.bowl`);
  const found = judge(joinSources([...shelf, read(path)]), DAY)
    .all()
    .findings.filter(({ place }) => place.file === path);
  const told = (is: (finding: Finding) => boolean): string[] =>
    [...new Set(found.filter(is).map(({ severity, rule }) => `${severity} ${rule}`))].sort();
  return { loud: told(({ severity }) => severity !== 'mind'), minds: told(({ severity }) => severity === 'mind') };
};
