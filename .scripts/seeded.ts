// Plants mistakes in every sound visit of the demo and the examples and prints how many are seen, and what is found where
// none was planted: npm run seeded [-- --every 5] [--only "lost off"] [--show]. Exit code 0 whatever is seen.
import { parseArgs } from 'node:util';
import { HARMLESS } from './seeded/harmless.ts';
import { MISTAKES } from './seeded/mistakes.ts';
import { type Score, scoreOf } from './seeded/score.ts';
import { demoNotes, exampleNotes } from './seeded/seeded-notes.ts';

const { values } = parseArgs({
  options: { every: { type: 'string' }, only: { type: 'string' }, show: { type: 'boolean' } },
});
const every = Number(values.every ?? 1);
if (!Number.isInteger(every) || every < 1) throw new Error('--every takes a whole number from 1');
const isAsked = ({ name }: { name: string }): boolean => values.only === undefined || name === values.only;
const [mistakes, harmless] = [MISTAKES.filter(isAsked), HARMLESS.filter(isAsked)];
if (mistakes.length + harmless.length === 0)
  throw new Error(`--only takes one of: ${[...MISTAKES, ...HARMLESS].map(({ name }) => name).join(', ')}`);

const notes = [...demoNotes(), ...exampleNotes()].filter((_, index) => index % every === 0);
const share = (part: number, of: number): string => (of === 0 ? '–' : `${((100 * part) / of).toFixed(1)} %`);
const row = ({ name, planted, seen, loud }: Score): string =>
  `| ${name.padEnd(26)} | ${String(planted).padStart(7)} | ${share(seen, planted).padStart(8)} | ${share(loud, planted).padStart(12)} |`;
const head = (first: string): string =>
  `| ${first.padEnd(26)} | planted |     seen | above \`mind\` |\n| ${'-'.repeat(26)} | ------: | -------: | -----------: |`;
const summed = (scores: readonly Score[]): Score => ({
  name: 'all',
  says: '',
  planted: scores.reduce((sum, { planted }) => sum + planted, 0),
  seen: scores.reduce((sum, { seen }) => sum + seen, 0),
  loud: scores.reduce((sum, { loud }) => sum + loud, 0),
  odd: [],
});

const tell = process.stderr.isTTY
  ? (done: number) => process.stderr.write(`\r${done} of ${notes.length} visits`)
  : undefined;
const scores = scoreOf(notes, [...mistakes, ...harmless], tell);
if (tell !== undefined) process.stderr.write('\n');
const seeded = scores.slice(0, mistakes.length);
const others = scores.slice(mistakes.length);
console.log(`${notes.length} sound visits\n\n${head('mistake')}\n${[...seeded, summed(seeded)].map(row).join('\n')}`);
console.log(`\n${head('no mistake')}\n${[...others, summed(others)].map(row).join('\n')}`);
if (values.show === true)
  for (const { name, odd } of scores) console.log(`\n${name}\n${odd.map((one) => `  ${one}`).join('\n')}`);
