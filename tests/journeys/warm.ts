import { spawn, spawnSync } from 'node:child_process';
import { closeSync, mkdtempSync, openSync, readSync, rmSync, writeSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import type { Ran } from './program.ts';

/** A process in which the built program runs again and again: starting one for each run was half of the tests' time. */
type Warm = { readonly ask: number; readonly answer: number; runs: number };

/** Runs before another process is taken, so that what one leaves in memory does not add up. */
const MOST_RUNS = 100;

let warm: Warm | undefined;

const start = (entry: string): Warm => {
  const folder = mkdtempSync(join(tmpdir(), 'bowlbook-warm-'));
  const [asking, answering] = [join(folder, 'ask'), join(folder, 'answer')];
  if (spawnSync('mkfifo', [asking, answering]).status !== 0) throw new Error('no pipes could be made');
  const { NO_COLOR: _no, FORCE_COLOR: _force, ...env } = process.env;
  const child = spawn(process.execPath, [resolve('tests/journeys/warm-server.mjs'), entry, asking, answering], {
    stdio: ['ignore', 'ignore', 'inherit'],
    env,
  });
  child.unref();
  // Each waits until the other has opened it.
  const pipes = { ask: openSync(asking, 'w'), answer: openSync(answering, 'r'), runs: 0 };
  rmSync(folder, { recursive: true });
  return pipes;
};

const take = (from: number, length: number): Buffer => {
  const bytes = Buffer.alloc(length);
  for (let had = 0; had < length; ) {
    const now = readSync(from, bytes, had, length - had, null);
    if (now === 0) throw new Error('the program’s process ended');
    had += now;
  }
  return bytes;
};

/** What a run of the built program comes to, in a process that ran it before; its module state is new each time. */
export const runWarm = (entry: string, words: readonly string[], cwd: string): Ran => {
  if (warm !== undefined && warm.runs >= MOST_RUNS) {
    closeSync(warm.ask);
    closeSync(warm.answer);
    warm = undefined;
  }
  warm ??= start(entry);
  warm.runs += 1;
  const asked = Buffer.from(JSON.stringify({ words, cwd }), 'utf8');
  const head = Buffer.alloc(4);
  head.writeUInt32LE(asked.length);
  for (const part of [head, asked]) for (let at = 0; at < part.length; ) at += writeSync(warm.ask, part, at);
  try {
    return JSON.parse(take(warm.answer, take(warm.answer, 4).readUInt32LE()).toString('utf8')) as Ran;
  } catch (error) {
    warm = undefined;
    throw error;
  }
};
