// Measures how time and memory grow with the notes, in each way in which notes grow: npm run growth -- --help
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { DIMENSIONS, type Dimension, makeFolder } from './growth/dimensions.ts';
import { runOf } from './growth/run-of.ts';

const HELP = `npm run growth [-- OPTIONS]

Makes journals of growing size, runs the built program on them, and shows processor seconds, megabytes and the exponent
of growth: 1 where twice the notes take twice the time. It is taken between the two largest sizes, less what the same
command takes on a journal of one.

  --only A,B   these alone: ${DIMENSIONS.map(({ name }) => name).join(', ')}
  --runs N     runs of each measure, of which the least counts (default 1)
  --bar X      exit code 1 when an exponent is above it, such as 1.1
  --small N    sizes divided by this, for a quick look (default 1)
  --command W  command lines that hold this word alone
  --entry FILE the program to run (default dist/bowlbook.js)
  --wait S     seconds after which a run is given up (default 600)
`;

const { values } = parseArgs({
  options: {
    only: { type: 'string' },
    runs: { type: 'string', default: '1' },
    bar: { type: 'string' },
    small: { type: 'string', default: '1' },
    command: { type: 'string' },
    entry: { type: 'string', default: join('dist', 'bowlbook.js') },
    wait: { type: 'string', default: '600' },
    help: { type: 'boolean', default: false },
  },
});

type Cost = { readonly cpu: number; readonly memory: number };

const leastOf = async (words: readonly string[], scratch: string): Promise<Cost | undefined> => {
  let least: Cost | undefined;
  for (let run = 0; run < Number(values.runs); run++) {
    const cost = await runOf([values.entry, ...words], { scratch, wait: Number(values.wait) * 1000 });
    if (cost === undefined) return undefined;
    if (least === undefined || cost.cpu < least.cpu) least = cost;
  }
  return least;
};

/** Less than this beyond the journal of one, seconds, is not told from noise, and cannot be above any bar. */
const SMALLEST = 0.25;

/** How the time grows from one size to the next: the exponent of the size; undefined where there is too little to tell. */
const exponentOf = (
  a: { size: number; cpu: number },
  b: { size: number; cpu: number },
  one: number,
): number | undefined =>
  b.cpu - one < SMALLEST
    ? undefined
    : Math.log((b.cpu - one) / Math.max(a.cpu - one, 0.05)) / Math.log(b.size / a.size);

const shown = (words: readonly string[]): string =>
  words.filter((word) => !/^(FOLDER|OUT|--out|--on|--from|--to|ana-grove|\d{4}-.*)$/.test(word)).join(' ');

const cell = (cost: Cost | undefined): string =>
  (cost === undefined ? 'given up' : `${cost.cpu.toFixed(2)} s ${cost.memory.toFixed(0)} MB`).padStart(18);

/** Measures one dimension; gives its command lines that are above the bar. */
const measure = async (dimension: Dimension, scratch: string): Promise<string[]> => {
  const sizes = dimension.sizes.map((size) => Math.max(2, Math.round(size / Number(values.small))));
  const folderOf = (size: number): string => join(scratch, `${dimension.name}-${size}`);
  for (const size of [1, ...sizes]) makeFolder(folderOf(size), dimension, size);
  console.log(`\n${dimension.name}: ${dimension.of}`);
  console.log(`${''.padEnd(18)}${[1, ...sizes].map((size) => `${size}`.padStart(18)).join('')}  exponent`);
  const above: string[] = [];
  for (const words of dimension.runs.filter((run) => values.command === undefined || run.includes(values.command))) {
    const costs: (Cost | undefined)[] = [];
    for (const size of [1, ...sizes]) {
      const given = words.map((word) =>
        word === 'FOLDER' ? folderOf(size) : word === 'OUT' ? join(scratch, 'pages') : word,
      );
      costs.push(await leastOf(given, scratch));
    }
    const [one, ...rest] = costs;
    const [a, b] = [rest.at(-2), rest.at(-1)];
    const exponent =
      one === undefined || a === undefined || b === undefined
        ? undefined
        : exponentOf(
            { size: sizes.at(-2) as number, cpu: a.cpu },
            { size: sizes.at(-1) as number, cpu: b.cpu },
            one.cpu,
          );
    const isAbove =
      b === undefined || (exponent !== undefined && exponent > Number(values.bar ?? Number.POSITIVE_INFINITY));
    if (isAbove) above.push(`${dimension.name}: ${shown(words)}`);
    const figure = exponent === undefined ? (b === undefined ? '' : 'too little to tell') : exponent.toFixed(2);
    console.log(`${shown(words).padEnd(18)}${costs.map(cell).join('')}  ${figure}${isAbove ? ' above' : ''}`);
  }
  for (const size of [1, ...sizes]) rmSync(folderOf(size), { recursive: true });
  return above;
};

const growth = async (): Promise<void> => {
  const scratch = mkdtempSync(join(tmpdir(), 'growth-'));
  const only = values.only?.split(',');
  try {
    const above: string[] = [];
    for (const dimension of DIMENSIONS)
      if (only === undefined || only.includes(dimension.name)) above.push(...(await measure(dimension, scratch)));
    if (values.bar === undefined) return;
    console.log(above.length === 0 ? `\nNone above ${values.bar}.` : `\nAbove ${values.bar}:\n  ${above.join('\n  ')}`);
    if (above.length > 0) process.exitCode = 1;
  } finally {
    rmSync(scratch, { recursive: true, force: true });
  }
};

if (values.help) console.log(HELP);
else await growth();
