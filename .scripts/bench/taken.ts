import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';

/** What a process took from its start to its end: milliseconds of wall and of processor, megabytes at the most. */
export type Taken = { readonly wall: number; readonly cpu: number; readonly memory: number };

/** Runs a process of its own and gives what it took. Throws when it ends with another code than expected. */
export const takenBy = (words: readonly string[], scratch: string, expected: readonly number[] = [0]): Taken => {
  const out = join(scratch, 'taken.json');
  const { status, stderr } = spawnSync(process.execPath, ['--require', './.scripts/bench/measure.cjs', ...words], {
    env: { ...process.env, BENCH_OUT: out, NO_COLOR: '1' },
    stdio: ['ignore', 'ignore', 'pipe'],
    encoding: 'utf8',
  });
  if (status === null || !expected.includes(status))
    throw new Error(`${words.join(' ')} ended with ${status}: ${stderr}`);
  return JSON.parse(readFileSync(out, 'utf8'));
};

/** The one with the middle processor time of several runs. */
export const middle = (runs: readonly Taken[]): Taken =>
  [...runs].sort((a, b) => a.cpu - b.cpu)[Math.floor(runs.length / 2)] as Taken;
