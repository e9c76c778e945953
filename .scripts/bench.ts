// Measures the check of made-up journals against other work on the same files, in one run: npm run bench
import { mkdtempSync, rmSync } from 'node:fs';
import { cpus, tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { editsToPages } from './bench/edits.ts';
import { keystrokes } from './bench/keystrokes.ts';
import { type MadeJournal, makeJournal } from './bench/make-journal.ts';
import { writeSameFacts } from './bench/same-facts.ts';
import { middle, type Taken, takenBy } from './bench/taken.ts';

const HELP = `npm run bench [-- OPTIONS]

Makes seeded journals, checks them cold, and measures other work on the same files beside it.

  --visits N   visits of the large journal (default 100000)
  --growth N…  sizes that growth is shown at, with commas (default 1000,10000,100000)
  --edits N    one-file edits under the watcher (default 60; 0 leaves them out)
  --edits-at N visits of the journal that is watched (default 10000)
  --runs N     runs of each measure, of which the middle one counts (default 3)
  --seed N     seed of the journals (default 1)
`;

const { values } = parseArgs({
  args: process.argv.slice(2),
  options: {
    visits: { type: 'string', default: '100000' },
    growth: { type: 'string', default: '1000,10000,100000' },
    edits: { type: 'string', default: '60' },
    'edits-at': { type: 'string', default: '10000' },
    runs: { type: 'string', default: '3' },
    seed: { type: 'string', default: '1' },
    help: { type: 'boolean', default: false },
  },
});

/** Visits of one chair in a year: some six a day. */
const ONE_CHAIR = 1_400;

/** What the check is held against, by the name of its job, and on what it works. */
const JOBS = {
  'read and split': 'the same files',
  'JSON.parse': 'the same facts',
  'js-yaml': 'the same facts',
  yaml: 'the same facts',
  'markdown-it': 'the same bytes',
} as const;

const CHECK_CODES = [0, 1];

const seconds = (ms: number): string => `${(ms / 1000).toFixed(2)} s`;
const row = (cells: readonly string[]): string =>
  cells.map((cell, index) => (index === 0 ? cell.padEnd(34) : cell.padStart(12))).join('');

const measured = (words: readonly string[], scratch: string): Taken =>
  middle(Array.from({ length: Number(values.runs) }, () => takenBy(words, scratch, CHECK_CODES)));

const checkOf = (folder: string, scratch: string): Taken => measured(['dist/bowlbook.js', 'check', folder], scratch);

const withJournal = (visits: number, scratch: string): { readonly folder: string; readonly made: MadeJournal } => {
  const folder = join(scratch, `visits-${visits}`);
  return { folder, made: makeJournal(folder, visits, Number(values.seed)) };
};

const bench = async (): Promise<void> => {
  const scratch = mkdtempSync(join(tmpdir(), 'bench-'));
  const say = (line: string): void => console.log(line);
  try {
    const visits = Number(values.visits);
    const { folder, made } = withJournal(visits, scratch);
    const facts = join(scratch, 'facts');
    writeSameFacts(folder, facts);
    say(
      `${made.visits} visits, ${made.lines} lines, ${(made.bytes / 1e6).toFixed(1)} MB in ${made.files} files, seed ${values.seed}`,
    );
    say(
      `Node ${process.version}, ${cpus().length} processors; the middle of ${values.runs} runs; processor time, as wall time shares the machine\n`,
    );
    say(row(['', 'processor', 'wall', 'memory', 'check is']));
    const check = checkOf(folder, scratch);
    const line = (name: string, { cpu, wall, memory }: Taken, ratio: string): void =>
      say(row([name, seconds(cpu), seconds(wall), `${memory.toFixed(0)} MB`, ratio]));
    line('check, cold', check, '');
    for (const [name, on] of Object.entries(JOBS)) {
      const taken = measured(['.scripts/bench/job.mjs', name, folder, facts], scratch);
      line(`${name}, ${on}`, taken, `× ${(check.cpu / taken.cpu).toFixed(2)}`);
    }
    rmSync(facts, { recursive: true });

    say(`\n${row(['growth', 'processor', 'a visit', 'memory', 'to the last'])}`);
    let before: { readonly visits: number; readonly cpu: number } | undefined;
    for (const size of values.growth.split(',').map(Number)) {
      const taken = size === visits ? check : checkOf(withJournal(size, scratch).folder, scratch);
      const ratio = before && `× ${(taken.cpu / before.cpu).toFixed(1)} (${(size / before.visits).toFixed(0)})`;
      say(
        row([
          `${size} visits`,
          seconds(taken.cpu),
          `${(taken.cpu / size).toFixed(3)} ms`,
          `${taken.memory.toFixed(0)} MB`,
          ratio ?? '',
        ]),
      );
      before = { visits: size, cpu: taken.cpu };
    }

    say('');
    line(`one chair, a year (${ONE_CHAIR})`, checkOf(withJournal(ONE_CHAIR, scratch).folder, scratch), '');
    line('start (--version)', measured(['dist/bowlbook.js', '--version'], scratch), '');
    line('one bowl (mix)', measured(['dist/bowlbook.js', 'mix', '40 clay + 20vol 1:2'], scratch), '');

    const edits = Number(values.edits);
    if (edits > 0) {
      const watched = Number(values['edits-at']);
      say(`\n${row([`keystroke to findings, ${watched} visits`, 'middle', '95th', 'clients'])}`);
      for (const { where, middle: half, p95, worked } of keystrokes(withJournal(watched, scratch).folder, edits))
        say(row([where, `${half.toFixed(1)} ms`, `${p95.toFixed(1)} ms`, `${worked}`]));
      const to = await editsToPages(withJournal(watched, scratch).folder, edits);
      say(
        `\nwatching ${watched} visits: first build ${seconds(to.first)}; ${to.edits} one-file edits to the page: middle ${to.middle.toFixed(0)} ms, 95th percentile ${to.p95.toFixed(0)} ms`,
      );
    }
  } finally {
    rmSync(scratch, { recursive: true, force: true });
  }
};

if (values.help) console.log(HELP);
else await bench();
