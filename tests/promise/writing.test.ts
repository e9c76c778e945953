import { spawn, spawnSync } from 'node:child_process';
import {
  chmodSync,
  existsSync,
  lstatSync,
  mkdirSync,
  readFileSync,
  realpathSync,
  statSync,
  symlinkSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { basename, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { run } from '../../src/cli/program.ts';
import { openPageFolder } from '../../src/cli/watch/page-folder.ts';
import { CLIENTS, JOURNAL, useProgram } from '../journeys/program.ts';
import { watchDisk } from './preload/disk.mjs';
import { NOT_OURS, stateOf, TREE } from './tree.ts';
import { contentOf, WRITING } from './writing.ts';

const program = await useProgram();

beforeAll(() => {
  for (const stream of [process.stdout, process.stderr]) vi.spyOn(stream, 'write').mockReturnValue(true);
});
afterAll(() => vi.restoreAllMocks());

/** Commands that change notes that stand. */
const CHANGING = WRITING.filter(({ says }) => ['now', 'rebook --append auto', 'neaten'].includes(says));

describe.each(CHANGING)('$says', ({ words, files, writes }) => {
  const [name = ''] = writes;

  test('temp file beside, fsync, rename, fsync folder', async () => {
    const folder = realpathSync(program.folder(files));
    const steps: string[] = [];
    const restore = watchDisk(folder, (step) => {
      if (!/-\d+\.new$/.test(step.path)) steps.push(`${step.name} ${basename(step.path)}`);
      return undefined;
    });
    await run(words(folder)).finally(restore);
    const beside = `.${name}.${process.pid}.new`;
    expect(steps.slice(0, 6)).toEqual([
      `openSync ${beside}`,
      `fchmodSync ${beside}`,
      `writeFileSync ${beside}`,
      `fsyncSync ${beside}`,
      `renameSync ${beside}`,
      `fsyncSync ${basename(folder)}`,
    ]);
  });

  test('mode and symlink kept; nobody else can read the temp file who cannot read the notes', async () => {
    const folder = realpathSync(program.folder(files));
    mkdirSync(join(folder, 'deep'), { recursive: true });
    const real = join(folder, 'deep', 'elsewhere.txt');
    writeFileSync(real, files[name] ?? '', { mode: 0o600 });
    spawnSync('rm', [join(folder, name)]);
    symlinkSync(real, join(folder, name));
    const modes: number[] = [];
    const restore = watchDisk(realpathSync(real).replace(/elsewhere\.txt$/, ''), (step) => {
      if (step.name === 'writeFileSync' && !/-\d+\.new$/.test(step.path)) modes.push(statSync(step.path).mode & 0o777);
      return undefined;
    });
    await run(words(folder)).finally(restore);
    expect(modes).toEqual([0o600]);
    expect(lstatSync(join(folder, name)).isSymbolicLink()).toBe(true);
    expect([statSync(real).mode & 0o777, readFileSync(real, 'utf8') === files[name]]).toEqual([0o600, false]);
  });

  test('line endings and byte-order mark kept', async () => {
    const plain = program.folder(files);
    await run(words(plain));
    const windows = (text: string): string => `\ufeff${text.replaceAll('\n', '\r\n')}`;
    const folder = program.folder({ ...files, [name]: windows(files[name] ?? '') });
    await run(words(folder));
    expect(readFileSync(join(folder, name), 'utf8')).toBe(windows(readFileSync(join(plain, name), 'utf8')));
  });

  test('refuses if the file changed since it was read, at whatever moment', async () => {
    for (const moment of ['openSync', 'writeFileSync', 'fsyncSync']) {
      const folder = realpathSync(program.folder(files));
      const theirs = `${files[name]}# typed meanwhile\n`;
      const restore = watchDisk(folder, (step) => {
        if (step.name === moment && step.path.endsWith(`.${name}.${process.pid}.new`))
          spawnSync('sh', ['-c', `cat > '${join(folder, name)}'`], { input: theirs });
        return undefined;
      });
      const running = run(words(folder)).finally(restore);
      await expect(running, moment).rejects.toThrow('has changed since it was read, so it is not written');
      const now = contentOf(folder);
      expect(now[name]).toBe(theirs);
      expect(Object.keys(now).filter((one) => one.endsWith('.new'))).toEqual([]);
    }
  });

  test('a file that is marked read-only is not written, and the reason is said', async () => {
    const folder = program.folder(files);
    chmodSync(join(folder, name), 0o444);
    await expect(run(words(folder))).rejects.toMatchObject({
      message: expect.stringContaining('is read-only, so it is not written'),
      todo: expect.stringMatching(/writable/),
    });
    expect(readFileSync(join(folder, name), 'utf8')).toBe(files[name]);
  });
});

test('files it does not understand are left alone: only the notes that are named change', async () => {
  const folder = program.folder(TREE);
  for (const name of Object.keys(TREE)) utimesSync(join(folder, name), 1_700_000_000, 1_700_000_000);
  const before = stateOf(folder);
  await run(['neaten', folder]);
  await run(['now', 'check A hairline gold', folder, '--at', '14:40', '--on', '2026-11-25']);
  await run(['rebook', 'bryn-abbott', folder, '--append', join(folder, 'clients.bowl')]);
  const after = stateOf(folder);
  expect(Object.keys(after)).toEqual(Object.keys(before));
  for (const name of Object.keys(NOT_OURS)) expect(after[name], name).toBe(before[name]);
  const changed = Object.keys(after).filter((name) => after[name] !== before[name] && name.endsWith('.bowl'));
  expect(changed).toEqual(['clients.bowl', 'today.bowl']);
});

describe('no page is put in the place of notes', () => {
  const pages: readonly (readonly [string, (folder: string) => string])[] = [
    ['a file that was read', (folder) => join(folder, 'clients.bowl')],
    ['a link to one', (folder) => join(folder, 'page.md')],
    ['a new file with the ending of notes', (folder) => join(folder, 'page.bowl')],
  ];
  test.each(pages)('%s', async (_, target) => {
    const folder = program.folder(JOURNAL);
    symlinkSync('clients.bowl', join(folder, 'page.md'));
    const before = stateOf(folder);
    const words = ['card', 'wren-abbott', folder, '-o', target(folder)];
    await expect(run(words)).rejects.toThrow('is a file of notes, and no page is put in its place');
    expect(stateOf(folder)).toEqual(before);
  });

  test('a file of notes with another ending that was named to be read', async () => {
    const folder = program.folder({ 'all.txt': CLIENTS });
    const path = join(folder, 'all.txt');
    await expect(run(['card', 'wren-abbott', path, '-o', path])).rejects.toThrow('is a file of notes');
    expect(readFileSync(path, 'utf8')).toBe(CLIENTS);
  });
});

test('no visit is added to a file that is not read as notes', async () => {
  const folder = program.folder({ ...JOURNAL, 'letter.txt': 'Dear Wren\n' });
  const words = ['rebook', 'wren-abbott', folder, '--append', join(folder, 'letter.txt')];
  await expect(run(words)).rejects.toThrow('is no file of notes');
  expect(readFileSync(join(folder, 'letter.txt'), 'utf8')).toBe('Dear Wren\n');
});

test('an output folder that holds notes is refused, and nothing in it is touched', () => {
  const folder = program.folder({ 'notes/a.bowl': CLIENTS, 'out/deep/b.bowl': CLIENTS });
  const before = stateOf(folder);
  for (const out of ['out', 'notes', '.'])
    expect(() => openPageFolder(join(folder, out), join(folder, 'notes'))).toThrow(/holds (?:the )?notes/);
  expect(stateOf(folder)).toEqual(before);
});

test('a folder that is not empty is no place for a new journal, and nothing in it is touched', async () => {
  const folder = program.folder({ 'letter.txt': 'x' });
  const before = stateOf(folder);
  await expect(run(['new', folder])).rejects.toThrow('is not empty');
  expect(stateOf(folder)).toEqual(before);
});

test('a pipe is written to as it stands, and stays one', async () => {
  const folder = program.folder(JOURNAL);
  const pipe = join(folder, 'pipe');
  expect(spawnSync('mkfifo', [pipe]).status).toBe(0);
  const reader = spawn('cat', [pipe]);
  let read = '';
  reader.stdout.on('data', (chunk: Buffer) => {
    read += chunk.toString();
  });
  const ended = new Promise((done) => reader.on('close', done));
  program.run(['card', 'wren-abbott', folder, '-o', pipe, '--on', '2026-11-25']);
  await ended;
  expect(read).toContain('# Wren Abbott');
  expect(lstatSync(pipe).isFIFO()).toBe(true);
});

test('a folder in the place of a page is named as one', async () => {
  const folder = program.folder(JOURNAL);
  await expect(run(['card', 'wren-abbott', folder, '-o', folder])).rejects.toThrow('is a folder');
  expect(existsSync(join(folder, 'clients.bowl'))).toBe(true);
});
