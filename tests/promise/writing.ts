import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { CLIENTS, JOURNAL } from '../journeys/program.ts';

/** A command that writes: its words, with the folder's own path before each file, and the files it may write. */
export type Writing = {
  readonly says: string;
  readonly words: (folder: string) => readonly string[];
  readonly files: Readonly<Record<string, string>>;
  /** Files that stand after it as they did not before. */
  readonly writes: readonly string[];
};

const OPEN = `visit 2026-11-25 14:00 wren-abbott by io
  bowl A 40 clay + 20vol 1:2
  on 14:20-14:30 A hairline
`;
const TODAY = { ...JOURNAL, 'today.bowl': OPEN };
const CLUMSY = CLIENTS.replaceAll('\n  ', '\n\t ');
const on = ['--on', '2026-11-25'];

/** Every command that writes, and every way in which it does. */
export const WRITING: readonly Writing[] = [
  {
    says: 'now',
    words: (folder) => ['now', 'check A hairline gold', folder, '--at', '14:40', ...on],
    files: TODAY,
    writes: ['today.bowl'],
  },
  {
    says: 'rebook --append auto',
    words: (folder) => ['rebook', 'wren-abbott', folder, '--append', 'auto'],
    files: JOURNAL,
    writes: ['clients.bowl'],
  },
  {
    says: 'rebook --append to a new file',
    words: (folder) => ['rebook', 'wren-abbott', folder, '--append', join(folder, 'next.bowl')],
    files: JOURNAL,
    writes: ['next.bowl'],
  },
  {
    says: 'neaten',
    words: (folder) => ['neaten', folder],
    files: { ...JOURNAL, 'a.bowl': OPEN.replaceAll('  ', '   '), 'clients.bowl': CLUMSY },
    writes: ['a.bowl', 'clients.bowl'],
  },
  {
    says: 'card -o over an older page',
    words: (folder) => ['card', 'wren-abbott', folder, '-o', join(folder, 'wren.html'), ...on],
    files: { ...JOURNAL, 'wren.html': 'an older page' },
    writes: ['wren.html'],
  },
  {
    says: 'usage --csv -o to a new file',
    words: (folder) => ['usage', folder, '--csv', '-o', join(folder, 'usage.csv'), ...on],
    files: JOURNAL,
    writes: ['usage.csv'],
  },
  {
    says: 'new',
    words: (folder) => ['new', join(folder, 'salon'), ...on],
    files: {},
    writes: ['salon/salon.bowl', 'salon/shelf.bowl'],
  },
];

/** Every file below a folder with its content, hidden ones too, and every folder. */
export const contentOf = (folder: string): Record<string, string> =>
  Object.fromEntries(
    readdirSync(folder, { recursive: true, encoding: 'utf8' })
      .sort()
      .map((name) => [
        name,
        statSync(join(folder, name)).isFile() ? readFileSync(join(folder, name), 'utf8') : 'a folder',
      ]),
  );
