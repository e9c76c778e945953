import { spawn, spawnSync } from 'node:child_process';
import { chmodSync, copyFileSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { useProgram } from '../journeys/program.ts';
import { type Warm, warmProgram } from '../journeys/warm.ts';
import { until } from '../watch/watching.ts';
import { stateOf, TREE } from './tree.ts';

const program = await useProgram();
const on = ['--on', '2026-11-25'];

/** Every command that reads, in the forms that differ in what they load. */
const READING: readonly (readonly string[])[] = [
  ['mix', '40 clay + 20vol 1:2', '--shelf', '.', ...on],
  ['card', 'wren-abbott', ...on],
  ['card', 'wren-abbott', '--html', '--money', ...on],
  ['card', 'wren-abbott', '--json', ...on],
  ['clients', '--html', ...on],
  ['prep', '2026-11-25', '--html'],
  ['rebook', 'wren-abbott', ...on.slice(0, 1), '2026-12-12'],
  ['check', ...on],
  ['check', '--json', '--allowed', ...on],
  ['due', '--html', ...on],
  ['due', '--ics', ...on],
  ['usage', '--html', ...on],
  ['usage', '--csv', ...on],
  ['money', '--html', ...on],
  ['money', '--csv', ...on],
  ['hindsight', 'lift'],
  ['hindsight', 'mix', '--json'],
  ['neaten', '--check'],
  ['shelf', '--html', ...on],
  ['order', '--csv', ...on],
  ['trace', 'K2231', '--html'],
  ['why'],
  ['why', 'unknown-word'],
  ['help', 'card'],
  ['now', 'chekc A gold', '--at', '14:40', ...on],
  ['card', 'nobody', ...on],
];

/** Commands that say of themselves that they write. `neaten --check`, `rebook` without `--append` and a page without `-o` read. */
const WRITING = ['new', 'now', 'neaten', 'watch'];

afterAll(() => sealed?.end());

/** What the machine has that no page may tell. */
const MACHINE = {
  ...{ HOME: '/canary-home', USER: 'canary-user', LOGNAME: 'canary-log', HOSTNAME: 'canary-host' },
  ...{ EMAIL: 'canary@example.invalid', TOKEN: 'canary-token', LANG: 'de_DE.UTF-8' },
};

const who = process.getuid?.() === 0 ? { uid: 65_534, gid: 65_534 } : {};

let seal = '';
let folder = '';
let sealed: Warm;

beforeAll(() => {
  const own = program.folder();
  // Whoever runs the tests as the system's owner reads as somebody else, whom the modes of the tree hold.
  chmodSync(dirname(own), 0o755);
  seal = join(own, 'sealed.mjs');
  copyFileSync(new URL('./preload/sealed.mjs', import.meta.url), seal);
  const server = join(own, 'warm-server.mjs');
  copyFileSync(new URL('../journeys/warm-server.mjs', import.meta.url), server);
  const env = { PATH: process.env.PATH, SEALED: 'warm', ...MACHINE };
  sealed = warmProgram(program.entry(), { args: ['--import', seal], env, server, ...who });
  folder = program.folder(TREE);
  symlinkSync('clients.bowl', join(folder, 'link.bowl'));
  symlinkSync('nowhere.bowl', join(folder, 'broken.bowl'));
  for (const name of ['.', ...readdirSync(folder, { recursive: true, encoding: 'utf8' })])
    if (!/^(?:link|broken)/.test(name)) chmodSync(join(folder, name), /\.\w+$/.test(name) ? 0o444 : 0o555);
});

const runSealed = (words: readonly string[]) =>
  spawnSync(process.execPath, ['--import', seal, program.entry(), ...words], {
    cwd: folder,
    env: { PATH: process.env.PATH },
    encoding: 'utf8',
    ...who,
  });

test('every command is one that reads or one that says it writes', () => {
  const { stdout } = runSealed(['--help']);
  const names = [...stdout.matchAll(/^ {2}(?!bowlbook)([a-z]+)(?= .*? {2})/gm)].map(([, name]) => name);
  expect(names.length).toBeGreaterThan(15);
  const known = new Set([...READING.map(([name]) => name), ...WRITING]);
  expect(names.filter((name) => !known.has(name ?? ''))).toEqual([]);
});

describe.each(READING.map((words) => ({ says: words.join(' '), words })))('$says', ({ words }) => {
  test('against a read-only tree leaves hashes and times equal, opens no connection, starts no program', () => {
    const before = stateOf(folder);
    const { code, out, err } = sealed.run(words, folder);
    expect(err).not.toContain('under seal');
    expect([0, 1, 2], err).toContain(code);
    expect(stateOf(folder)).toEqual(before);
    printed.push({ words: words.join(' '), text: out + err });
  });
});

const printed: { readonly words: string; readonly text: string }[] = [];

test('nothing of the machine goes into what any of them prints: no name, no folder, no setting', () => {
  expect(printed.length).toBe(READING.length);
  for (const { words, text } of printed) {
    expect(text, words).toMatch(/\S/);
    expect(text, words).not.toMatch(/canary/);
    expect(text, words).not.toContain(folder);
  }
});

describe('the seal itself', () => {
  test('tells of a command that writes, in a process that runs many', () => {
    const own = program.folder(TREE);
    chmodSync(own, 0o777);
    const { err } = sealed.run(['card', 'wren-abbott', '-o', join(own, 'page.html'), ...on], own);
    expect(err).toContain('under seal');
    expect(readdirSync(own).filter((name) => /page|\.new$/.test(name))).toEqual([]);
    expect(sealed.run(['card', 'wren-abbott', ...on], own).err).not.toContain('under seal');
  });

  test.each([
    ['a write', "import { writeFileSync } from 'node:fs'; writeFileSync('x', 'x')"],
    ['a connection', "import { connect } from 'node:net'; connect(80, '127.0.0.1')"],
    ['a request', "await fetch('http://127.0.0.1')"],
    ['a program', "import { spawnSync } from 'node:child_process'; spawnSync('true')"],
  ])('tells of %s', (_, script) => {
    const args = ['--import', seal, '--input-type=module', '-e', script];
    const { status, stderr } = spawnSync(process.execPath, args, { encoding: 'utf8', cwd: program.folder() });
    expect(stderr).toContain('under seal');
    expect([1, 99]).toContain(status);
  });
});

test('watching leaves a read-only tree as it was, and opens no connection of its own', async () => {
  const before = stateOf(folder);
  const out = program.folder();
  chmodSync(out, 0o777);
  const words = ['--import', seal, program.entry(), 'watch', '.', '--out', join(out, 'pages'), '--open', ...on];
  const child = spawn(process.execPath, words, { cwd: folder, env: { PATH: process.env.PATH, SEALED: 'net' }, ...who });
  let said = '';
  for (const stream of [child.stdout, child.stderr])
    stream.on('data', (chunk: Buffer) => {
      said += chunk.toString();
    });
  const ended = new Promise((done) => child.on('close', done));
  await until(`the address`, () => said.includes('http://'));
  const address = /http:\/\/\S+/.exec(said)?.[0] ?? '';
  expect((await fetch(address)).status).toBe(200);
  child.kill('SIGINT');
  expect(await ended).toBe(0);
  expect(said).not.toContain('under seal');
  expect(readdirSync(join(out, 'pages'))).toContain('index.html');
  expect(stateOf(folder)).toEqual(before);
});

test('notes that cannot be read are named, left alone, and the rest is read', () => {
  const closed = program.folder({ ...TREE });
  chmodSync(closed, 0o755);
  writeFileSync(join(closed, 'closed.bowl'), 'client closed "Closed"\n', { mode: 0o000 });
  const { status, stdout, stderr } = spawnSync(process.execPath, [program.entry(), 'clients', ...on], {
    cwd: closed,
    encoding: 'utf8',
    ...who,
  });
  expect(stdout).toContain('Wren Abbott');
  if (who.uid === undefined && status === 0) return;
  expect([status, stderr]).toEqual([2, expect.stringContaining('`closed.bowl` cannot be read')]);
  expect(readFileSync(join(closed, 'clients.bowl'), 'utf8')).toBe(TREE['clients.bowl']);
});
