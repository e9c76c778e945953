import { mkdtempSync, readFileSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { leftText } from '../../src/cli/left-text.ts';
import { leftOnDisk, replaceFile } from '../../src/cli/write/door.ts';
import { JOURNAL, useProgram } from '../journeys/program.ts';
import { watchDisk } from './preload/disk.mjs';

const program = await useProgram();
const OPEN = 'visit 2026-11-25 14:00 wren-abbott by io\n  bowl A 40 clay + 20vol 1:2\n';
const LINE = '  note ours';

describe('after a fault of the program', () => {
  const run = (at: string) => {
    const folder = realpathSync(program.folder({ ...JOURNAL, 'today.bowl': OPEN }));
    const path = join(folder, 'today.bowl');
    const env = {
      FAULT_AT: at,
      NODE_OPTIONS: `--import ${new URL('./preload/fault-at.mjs', import.meta.url)}`,
    };
    const words = ['now', LINE.trim(), folder, '--on', '2026-11-25', '--at', '14:40'];
    const { code, err } = program.run(words, { env });
    expect([code, err]).toEqual([3, expect.stringContaining('a fault as the test wants it')]);
    return { path, err, notes: readFileSync(path, 'utf8') };
  };

  test('before anything was written it is said that nothing was', () => {
    const { err, notes } = run('plan');
    expect(err).toContain('A fault in the program, not in the notes. No file was written.');
    expect(notes).toBe(OPEN);
  });

  test('after a file was written it is named, and it is whole', () => {
    const { err, notes, path } = run('print');
    expect(err).toContain(`Nothing was left half written. Written before it, and whole: \`${path}\`.`);
    expect(notes).toBe(`${OPEN}${LINE}\n`);
  });
});

const top = realpathSync(mkdtempSync(join(tmpdir(), 'bowlbook-left-')));
afterAll(() => rmSync(top, { recursive: true, force: true }));

test('what could not be taken away again is told as half written until it is gone', () => {
  const path = join(top, 'a.bowl');
  writeFileSync(path, 'old');
  const ours = (paths: readonly string[]): string[] => paths.filter((one) => one.startsWith(top));
  const error = (): NodeJS.ErrnoException => Object.assign(new Error('EIO'), { code: 'EIO' });
  // Half of the bytes are written, and the file beside cannot be taken away.
  const restore = watchDisk(top, ({ name }) => (name === 'writeFileSync' || name === 'rmSync' ? error() : undefined));
  expect(() => replaceFile(path, 'new and long', { mode: 0o600, sync: false })).toThrow('EIO');
  restore();
  const half = join(top, `.a.bowl.${process.pid}.new`);
  expect([ours(leftOnDisk().whole), ours(leftOnDisk().half)]).toEqual([[], [half]]);
  expect(readFileSync(half, 'utf8')).toBe('new an');
  replaceFile(path, 'new', { mode: 0o600, sync: false });
  expect([ours(leftOnDisk().whole), ours(leftOnDisk().half)]).toEqual([[path], []]);
  const restoreAgain = watchDisk(top, ({ name }) => (name === 'fsyncSync' ? error() : undefined));
  expect(() => replaceFile(path, 'newer', { mode: 0o600, sync: true })).toThrow('EIO');
  restoreAgain();
  expect(ours(leftOnDisk().half)).toEqual([]);
});

test('what is left is said as it is', () => {
  expect(leftText({ whole: [], half: [] })).toBe('No file was written.');
  expect(leftText({ whole: ['a', 'b', 'c', 'd'], half: [] })).toBe(
    'Nothing was left half written. Written before it, and whole: `b`, `c`, `d`, others.',
  );
  expect(leftText({ whole: ['a'], half: ['.b.1.new'] })).toBe(
    'This may be half written: `.b.1.new`. Written before it, and whole: `a`.',
  );
  expect(leftText({ whole: [], half: ['a\u001b[2J'] })).not.toContain('\u001b');
});
