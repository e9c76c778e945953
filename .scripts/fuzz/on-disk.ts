import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import {
  linkSync,
  lstatSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  readlinkSync,
  realpathSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Chance } from './chance.ts';
import { promise } from './promises.ts';

/** What the built program promises of the disk: of folders with links in them, and of several runs at once. */

const ENTRY = resolve('dist', 'bowlbook.js');
const DAY = '2026-11-25';

const SALON = `salon quay "Quay"
  money GBP
product clay "Grey clay" lightener
  mix 1:2
product dev-6 "Cream developer" developer 6%
client wren "Wren"
  natural 6
visit 2026-09-04 14:00 wren
  bowl A 40 clay + 20vol 1:2
  next 8w roots
`;
const OPEN = `visit ${DAY} 14:00 wren
  bowl A 40 clay + 20vol 1:2
   on 14:20-14:30 A hairline
`;

type Run = {
  readonly words: readonly string[];
  readonly cwd: string;
  readonly env?: Readonly<Record<string, string>>;
  /** A run that goes on is interrupted once this stands in what it printed. */
  readonly until?: string;
};
type Ran = { readonly code: number | null; readonly signal: string | null; readonly out: string; readonly err: string };

const runTogether = (entry: string, runs: readonly Run[]): Ran[] => {
  const given = JSON.stringify({ entry, runs });
  const { stdout, stderr } = spawnSync(process.execPath, [resolve('.scripts/fuzz/run-together.mjs'), given], {
    encoding: 'utf8',
    maxBuffer: 1 << 28,
  });
  if (stdout === '') throw new Error(`the program was not run: ${stderr}`);
  return JSON.parse(stdout) as Ran[];
};

const inTemporary = (work: (top: string) => void): void => {
  const top = realpathSync(mkdtempSync(join(tmpdir(), 'bowlbook-fuzz-')));
  try {
    work(top);
  } finally {
    rmSync(top, { recursive: true, force: true });
  }
};

const writeAt = (path: string, text: string): void => {
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(path, text);
};

// --- Links ---

/** What is not the program's, and links may lead to. */
const OUTSIDE: Readonly<Record<string, string>> = {
  'victim.bowl': OPEN,
  'victim.txt': OPEN,
  'victim.html': '<p>theirs</p>\n',
  'cards/wren.html': '<p>theirs</p>\n',
  'cards/a.html': '<p>theirs</p>\n',
  'others/b.bowl': OPEN,
};
const TARGETS = [...Object.keys(OUTSIDE), 'cards', 'others', 'none.bowl', 'none.html', 'none/deep'];

const ABOUT =
  'These pages are made from notes by `bowlbook watch`. Whatever is in this folder may be written over or taken away.\n';

/** Names that the program reads or writes. */
const NAMES = [
  ...['today.bowl', 'salon.bowl', 'next.bowl', 'deep', 'deep/today.bowl', 'wren.html', 'usage.csv'],
  ...['pages', 'pages/clients', 'pages/index.html', 'pages/findings.html', 'pages/clients/wren.html'],
  ...['pages/clients/nobody.html', 'pages/about-these-pages.txt', 'pages/.gitignore'],
];

/** Commands that write, by the name that a case gives them. */
const COMMANDS: Readonly<Record<string, { readonly words: readonly string[]; readonly until?: string }>> = {
  now: { words: ['now', 'check A gold', '.', '--at', '14:40', '--on', DAY] },
  neaten: { words: ['neaten', '.'] },
  'neaten file': { words: ['neaten', 'today.bowl'] },
  rebook: { words: ['rebook', 'wren', '.', '--on', '2026-12-30', '--append', 'auto'] },
  'rebook next': { words: ['rebook', 'wren', '.', '--on', '2026-12-30', '--append', 'next.bowl'] },
  card: { words: ['card', 'wren', '.', '-o', 'wren.html'] },
  usage: { words: ['usage', '.', '--csv', '-o', 'usage.csv'] },
  watch: { words: ['watch', '.', '--on', DAY, '--no-events'], until: 'Ctrl-C ends it.' },
};

/** A command and links that stand in its way: `pages/clients -> cards`, `today.bowl => victim.bowl` for a second name. */
export const makeLinks = (chance: Chance): Buffer[] => {
  const lines = [chance.pick([...Object.keys(COMMANDS), 'watch', 'watch'])];
  for (let left = 1 + chance.below(4); left > 0; left--)
    lines.push(`${chance.pick(NAMES)} ${chance.comes(0.8) ? '->' : '=>'} ${chance.pick(TARGETS)}`);
  return [Buffer.from(lines.join('\n'))];
};

/** Every file and link below a folder, with what it holds. */
const stateOf = (folder: string): string =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .sort()
    .map((name) => {
      const stat = lstatSync(join(folder, name));
      const holds = stat.isFile()
        ? createHash('sha1')
            .update(readFileSync(join(folder, name)))
            .digest('hex')
        : stat.isSymbolicLink()
          ? readlinkSync(join(folder, name))
          : 'a folder';
      return `${name} ${stat.mode.toString(8)} ${holds}`;
    })
    .join('\n');

const placeLink = (notes: string, outside: string, line: string): void => {
  const [, name = '', kind, target = ''] = /^([\w./-]+) (->|=>) ([\w./-]+)$/.exec(line) ?? [];
  if (name === '' || name.includes('..') || target.includes('..') || name.startsWith('/')) return;
  const path = join(notes, name);
  try {
    if (name.startsWith('pages/')) {
      mkdirSync(dirname(path), { recursive: true });
      const about = join(notes, 'pages', 'about-these-pages.txt');
      if (path !== about && lstatSync(about, { throwIfNoEntry: false }) === undefined) writeFileSync(about, ABOUT);
    } else mkdirSync(dirname(path), { recursive: true });
    rmSync(path, { recursive: true, force: true });
    if (kind === '->') symlinkSync(join(outside, target), path);
    else linkSync(join(outside, target), path);
  } catch {
    // Another line of the case has taken the place, or there is nothing to give a second name to.
  }
};

/** Whatever links stand in a folder of notes, nothing outside is changed, and no run ends by a fault. `entry`: the built program. */
export const linksHold = (text: string, entry = ENTRY): void =>
  inTemporary((top) => {
    const [name = '', ...links] = text.split('\n');
    const command = COMMANDS[name];
    if (command === undefined) return;
    const [notes, outside] = [join(top, 'notes'), join(top, 'outside')];
    for (const [path, held] of Object.entries(OUTSIDE)) writeAt(join(outside, path), held);
    for (const [path, held] of [
      ['salon.bowl', SALON],
      ['today.bowl', OPEN],
    ] as const)
      writeAt(join(notes, path), held);
    for (const line of links) placeLink(notes, outside, line);
    const before = stateOf(outside);
    const [ran] = runTogether(entry, [{ ...command, cwd: notes }]);
    const after = stateOf(outside);
    promise(after === before, () => `a file outside the notes is changed by \`${name}\``);
    promise(
      ran?.code !== 3 && ran?.signal !== 'SIGKILL',
      () => `\`${name}\` ended with a fault: ${ran?.err.slice(0, 200)}`,
    );
  });

// --- Hands ---

/** Steps of writing that a run of `now` takes, and somewhat more. */
const STEPS = 14;

/** Two runs or three that write one file at once: of each, at which step it is held up and for how many milliseconds. */
export const makeHands = (chance: Chance): Buffer[] => {
  const lines = Array.from(
    { length: 2 + chance.below(2) },
    () => `${1 + chance.below(STEPS)} ${chance.pick([0, 300, 1000, 3000])}`,
  );
  return [Buffer.from(lines.join('\n'))];
};

/** However runs come between each other, a line that was said to be written stands once, and nothing else changed. */
export const handsHold = (text: string, entry = ENTRY): void =>
  inTemporary((top) => {
    const path = join(top, 'today.bowl');
    writeAt(join(top, 'salon.bowl'), SALON);
    writeAt(path, OPEN);
    const lines = text
      .split('\n')
      .flatMap((line) => {
        const [, step, pause] = /^(\d{1,3}) (\d{1,4})$/.exec(line) ?? [];
        return step === undefined ? [] : [{ step, pause: pause ?? '0' }];
      })
      .slice(0, 4);
    if (lines.length === 0) return;
    const preload = pathToFileURL(resolve('.scripts/fuzz/pause-at.mjs'));
    const ran = runTogether(
      entry,
      lines.map(({ step, pause }, hand) => ({
        words: ['now', `note hand-${hand}-end`, top, '--at', '14:40', '--on', DAY],
        cwd: top,
        env: { PAUSE_AT: step, PAUSE_MS: pause, PAUSE_BELOW: top, NODE_OPTIONS: `--import ${preload}` },
      })),
    );
    const stood = readFileSync(path, 'utf8').split('\n');
    for (const [hand, { code, err }] of ran.entries()) {
      const times = stood.filter((line) => line.includes(`note hand-${hand}-end`)).length;
      promise(code === 0 || code === 2, () => `a run ended with ${code}: ${err.slice(0, 200)}`);
      promise(times === (code === 0 ? 1 : 0), () => `a line of a run that ended with ${code} stands ${times} times`);
    }
    const rest = stood.filter((line) => !/note hand-\d-end$/.test(line)).join('\n');
    promise(rest === OPEN, () => 'other lines changed');
    const left = readdirSync(top).filter((name) => name.startsWith('.'));
    promise(left.length === 0, () => `a run left ${left.join(', ')}`);
  });
