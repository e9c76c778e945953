import {
  chmodSync,
  existsSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { writeNotes } from '../../src/cli/write/notes.ts';
import { writePage } from '../../src/cli/write/page.ts';

const root = mkdtempSync(join(tmpdir(), 'bowlbook-write-'));
afterAll(() => rmSync(root, { recursive: true, force: true }));

test('a file that changed since it was read is not written', () => {
  const path = join(root, 'changed.bowl');
  writeFileSync(path, 'typed meanwhile');
  expect(() => writeNotes(path, Buffer.from('ours'), Buffer.from('as read'), [root])).toThrow(
    /has changed since it was read/,
  );
  expect(readFileSync(path, 'utf8')).toBe('typed meanwhile');
  expect(readdirSync(root)).toEqual(['changed.bowl']);
});

test('a new file appears with the usual mode, an old one keeps its own', () => {
  const path = join(root, 'new.bowl');
  writePage(path, Buffer.from('a'), [root], { group: true, others: true });
  expect(statSync(path).mode & 0o111).toBe(0);
  chmodSync(path, 0o600);
  writeNotes(path, Buffer.from('b'), Buffer.from('a'), [root]);
  expect([statSync(path).mode & 0o777, readFileSync(path, 'utf8')]).toEqual([0o600, 'b']);
});

test('a folder that is not there is named and not made', () => {
  const nobody = { group: false, others: false };
  expect(() => writePage(join(root, 'none', 'x.md'), Buffer.from('x'), [root], nobody)).toThrow(
    /cannot be written: the folder `.*none` is not there/,
  );
  expect(existsSync(join(root, 'none'))).toBe(false);
});
