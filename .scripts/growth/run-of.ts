import { spawn } from 'node:child_process';
import { readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';

/** Processor seconds of a process, and megabytes at the most. */
export type Cost = { readonly cpu: number; readonly memory: number };

/** What `watch` says when every page stands. */
const READY = 'Ctrl-C';

/**
 * Runs a process of Node and gives what it took; undefined for one that took longer than `wait` milliseconds, which is
 * ended. `watch` is ended when its pages stand. Throws when it ends with a code that tells of a fault.
 */
export const runOf = async (
  words: readonly string[],
  { scratch, wait }: { readonly scratch: string; readonly wait: number },
): Promise<Cost | undefined> => {
  const out = join(scratch, 'cost.json');
  rmSync(out, { force: true });
  const isWatch = words.includes('watch');
  const child = spawn(process.execPath, ['--require', './.scripts/bench/measure.cjs', ...words], {
    env: { ...process.env, BENCH_OUT: out, NO_COLOR: '1' },
    stdio: ['ignore', isWatch ? 'pipe' : 'ignore', 'pipe'],
  });
  let said = '';
  let wrong = '';
  child.stdout?.on('data', (chunk: Buffer) => {
    said += chunk;
    if (said.includes(READY)) child.kill('SIGINT');
  });
  child.stderr?.on('data', (chunk: Buffer) => {
    wrong = (wrong + chunk).slice(-2_000);
  });
  let isLate = false;
  const late = setTimeout(() => {
    isLate = true;
    child.kill('SIGKILL');
  }, wait);
  const code = await new Promise<number | null>((ended) => child.on('close', ended));
  clearTimeout(late);
  if (isLate) return undefined;
  if (code !== 0 && code !== 1) throw new Error(`${words.join(' ')} ended with ${code}: ${wrong}`);
  const { cpu, memory } = JSON.parse(readFileSync(out, 'utf8')) as { cpu: number; memory: number };
  return { cpu: cpu / 1000, memory };
};
