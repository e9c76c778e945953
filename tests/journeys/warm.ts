import { spawn, spawnSync } from 'node:child_process';
import { chmodSync, closeSync, mkdtempSync, openSync, readSync, rmSync, writeSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import type { Ran } from './program.ts';

/** How a process is started in which the built program runs again and again. */
export type WarmOptions = {
  /** Node's own arguments. */
  readonly args?: readonly string[];
  readonly env?: Readonly<Record<string, string | undefined>>;
  /** The script of the process, where whoever runs it cannot read the tests; beside it the process begins. */
  readonly server?: string;
  readonly uid?: number;
  readonly gid?: number;
};

/** A process in which the built program runs again and again: starting one for each run was half of the tests' time. */
export type Warm = {
  /** What a run comes to; the program's module state is new each time, and `env` is set for this run alone. */
  readonly run: (words: readonly string[], cwd: string, env?: Readonly<Record<string, string>>) => Ran;
  readonly end: () => void;
};

/** Runs before another process is taken, so that what one leaves in memory does not add up. */
const MOST_RUNS = 100;

/** What one process may be told anew for each run; anything else is read when Node starts. */
const HARMLESS = new Set(['NO_COLOR', 'FORCE_COLOR', 'COLUMNS']);

/** Whether a run with this environment can be one in a process that ran the program before. */
export const canBeWarm = (env: Readonly<Record<string, string>> = {}): boolean =>
  Object.keys(env).every((name) => HARMLESS.has(name));

type Pipes = { readonly ask: number; readonly answer: number; runs: number };

const SERVER = resolve('tests/journeys/warm-server.mjs');

const start = (entry: string, { args = [], env = process.env, server = SERVER, ...who }: WarmOptions): Pipes => {
  const folder = mkdtempSync(join(tmpdir(), 'bowlbook-warm-'));
  const [asking, answering] = [join(folder, 'ask'), join(folder, 'answer')];
  if (spawnSync('mkfifo', ['-m', '666', asking, answering]).status !== 0) throw new Error('no pipes could be made');
  // Some tests run it as somebody else.
  chmodSync(folder, 0o755);
  const { NO_COLOR: _no, FORCE_COLOR: _force, ...inherited } = env;
  const child = spawn(process.execPath, [...args, server, entry, asking, answering], {
    stdio: ['ignore', 'ignore', 'inherit'],
    env: inherited,
    cwd: dirname(server),
    ...who,
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

const ask = ({ ask: to, answer }: Pipes, asked: Buffer): Ran => {
  const head = Buffer.alloc(4);
  head.writeUInt32LE(asked.length);
  for (const part of [head, asked]) for (let at = 0; at < part.length; ) at += writeSync(to, part, at);
  return JSON.parse(take(answer, take(answer, 4).readUInt32LE()).toString('utf8')) as Ran;
};

/** The built program in a process that is started when the first run is asked for. */
export const warmProgram = (entry: string, options: WarmOptions = {}): Warm => {
  let pipes: Pipes | undefined;
  const end = (): void => {
    if (pipes === undefined) return;
    closeSync(pipes.ask);
    closeSync(pipes.answer);
    pipes = undefined;
  };
  return {
    end,
    run: (words, cwd, env = {}) => {
      if (pipes !== undefined && pipes.runs >= MOST_RUNS) end();
      pipes ??= start(entry, options);
      pipes.runs += 1;
      try {
        return ask(pipes, Buffer.from(JSON.stringify({ words, cwd, env }), 'utf8'));
      } catch (error) {
        end();
        throw error;
      }
    },
  };
};

let shared: Warm | undefined;

/** What a run of the built program comes to, in a process that all tests of a worker share. */
export const runWarm = (
  entry: string,
  words: readonly string[],
  cwd: string,
  env?: Readonly<Record<string, string>>,
): Ran => {
  shared ??= warmProgram(entry);
  return shared.run(words, cwd, env);
};
