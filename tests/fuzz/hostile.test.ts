import { Worker } from 'node:worker_threads';
import { build } from 'esbuild';
import { afterAll, beforeAll, expect, test } from 'vitest';

/** A reading that has not ended by then is taken to hang. */
const KILL_AFTER = 30_000;

const READER = `
  import { parentPort } from 'node:worker_threads';
  import { readSource } from './src/journal/source.ts';
  import { neatenText } from './src/notation/neaten.ts';
  parentPort.on('message', (text) => {
    const { entries } = readSource('notes.bowl', Buffer.from(text));
    const neaten = neatenText(text);
    parentPort.postMessage({
      facts: entries.reduce((sum, { entry }) => sum + entry.facts.length, 0),
      notices: entries.reduce((sum, { notices }) => sum + notices.length, 0),
      neaten: neaten.length,
    });
  });
`;

type Outcome = { readonly facts: number; readonly notices: number; readonly neaten: number } | 'hangs';
let reader = '';
let worker: Worker | undefined;

beforeAll(async () => {
  const { outputFiles } = await build({
    stdin: { contents: READER, resolveDir: '.', loader: 'ts' },
    bundle: true,
    write: false,
    platform: 'node',
    format: 'cjs',
    logLevel: 'silent',
  });
  reader = outputFiles[0]?.text ?? '';
});

afterAll(async () => {
  await worker?.terminate();
});

/** Reads and neatens notes in a worker, which is ended when it does not come back. */
const readApart = (text: string): Promise<Outcome> =>
  new Promise((resolve, reject) => {
    worker ??= new Worker(reader, { eval: true });
    const running = worker;
    const kill = setTimeout(() => {
      worker = undefined;
      void running.terminate().then(() => resolve('hangs'));
    }, KILL_AFTER);
    running.once('message', (outcome: Outcome) => {
      clearTimeout(kill);
      running.removeAllListeners('error');
      resolve(outcome);
    });
    running.once('error', (error) => {
      clearTimeout(kill);
      worker = undefined;
      reject(error);
    });
    running.postMessage(text);
  });

const HEAD = 'visit 2026-09-04 wren-abbott\n';
const SIGNS = ['~', '"', '+', ',', '1', ':', '=', '#', 'a', ' ', '-', '%', '½', '“', '\u200b', '染', '(', 'x1 '];
const WORDS = ['bowl A', 'place', 'on', 'test skin', 'check', 'next', 'charge', 'note "', 'zone', 'caution', 'zork'];

test.for(SIGNS)('a line of a megabyte of %s is kept and reported', { timeout: 2 * KILL_AFTER }, async (sign) => {
  const long = `bowl A ${sign.repeat(1_000_000 / sign.length)}`;
  expect(await readApart(HEAD + long)).toMatchObject({ facts: 1, notices: 1 });
});

test.for(SIGNS)('a line of %s as long as a line may be is read', { timeout: 2 * KILL_AFTER }, async (sign) => {
  const line = `bowl A ${sign.repeat(99_990 / sign.length)}`;
  expect(await readApart(HEAD + line)).toMatchObject({ facts: 1 });
});

test.for(['~1', '1 + ', '1, ', '" ', '1:', '7/', 'from a ', 'lot ', 'A+', '1.', '= 1 ', '(', 'и-', '1-', '½ ', 'x '])(
  'long lines of %s over and over are read',
  { timeout: 2 * KILL_AFTER },
  async (sign) => {
    const lines = WORDS.map((word) => `${word} ${sign.repeat(8000 / sign.length)}`);
    expect(await readApart(HEAD + lines.join('\n'))).not.toBe('hangs');
  },
);

test.for(['1 ', '1½', '+1a', '1:2+'])(
  'a line of %s over and over, as long as a line may be, is read under a word that is none',
  { timeout: 2 * KILL_AFTER },
  async (sign) => {
    const line = `zork ${sign.repeat(99_990 / sign.length)}`;
    expect(await readApart(HEAD + line)).toMatchObject({ facts: 1, notices: 1 });
  },
);

test('a hundred thousand lines are read', { timeout: 2 * KILL_AFTER }, async () => {
  const lines = Array.from(
    { length: 100_000 },
    (_, i) => `  bowl ${i % 2 === 0 ? 'A' : 'b'}${i} ${i} clay + 20vol 1:2`,
  );
  expect(await readApart(HEAD + lines.join('\n'))).toMatchObject({ facts: 100_000 });
});

test('a hundred thousand lines of nobody, and as many merge marks, are kept', { timeout: 2 * KILL_AFTER }, async () => {
  expect(await readApart('zork\n'.repeat(100_000))).toMatchObject({ facts: 100_000, notices: 1 });
  expect(await readApart(`${HEAD}${'<<<<<<< a\n>>>>>>> b\n'.repeat(50_000)}`)).toMatchObject({ notices: 50_000 });
});
