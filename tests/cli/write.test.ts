import fs, {
  chmodSync,
  chownSync,
  existsSync,
  linkSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { syncBuiltinESMExports } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
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

describe('what a file that is put in the place of another takes over', () => {
  const said: string[] = [];
  beforeEach(() => {
    said.length = 0;
    vi.spyOn(process.stderr, 'write').mockImplementation((text) => said.push(String(text)) > 0);
  });
  afterEach(() => vi.restoreAllMocks());

  const write = {
    notes: (path: string): void => writeNotes(path, Buffer.from('new'), readFileSync(path), [root]),
    page: (path: string): void => writePage(path, Buffer.from('new'), [root], { group: true, others: true }),
  };

  test.each(['notes', 'page'] as const)('%s: another name of it keeps the old text, which is said once', (kind) => {
    const [path, other] = [join(root, `linked-${kind}.bowl`), join(root, `other-${kind}`)];
    writeFileSync(path, 'old');
    linkSync(path, other);
    write[kind](path);
    expect([readFileSync(path, 'utf8'), readFileSync(other, 'utf8')]).toEqual(['new', 'old']);
    expect(said).toEqual([
      `\`${path}\` had 2 names on the disk (hard links), and has the new text under this one alone: the others keep the old one.\n`,
    ]);
    write[kind](path);
    expect(said).toHaveLength(1);
  });

  /** Lets the system refuse an owner, or a group, that a file is given to. */
  const refusing = (refuses: (uid: number, gid: number) => boolean, work: () => void): void => {
    const { fchownSync } = fs;
    fs.fchownSync = (handle, uid, gid) => {
      if (refuses(uid, gid)) throw Object.assign(new Error('EPERM'), { code: 'EPERM' });
      fchownSync(handle, uid, gid);
    };
    syncBuiltinESMExports();
    try {
      work();
    } finally {
      fs.fchownSync = fchownSync;
      syncBuiltinESMExports();
    }
  };

  /** A file of another user and group, as only the system's owner can make one. */
  const theirs = (name: string): string => {
    const path = join(root, name);
    writeFileSync(path, 'old');
    chmodSync(path, 0o664);
    chownSync(path, 1234, 1235);
    return path;
  };
  const standing = (path: string): readonly number[] => {
    const { uid, gid, mode } = statSync(path);
    return [uid, gid, mode & 0o777];
  };
  const isOwner = process.getuid?.() === 0;

  test.runIf(isOwner)('its owner and group, without a word', () => {
    const path = theirs('kept.bowl');
    write.notes(path);
    expect([standing(path), said]).toEqual([[1234, 1235, 0o664], []]);
  });

  test.runIf(isOwner)('its group alone where the system keeps the owner from it, which is said', () => {
    const path = theirs('owner.bowl');
    refusing(
      (uid) => uid === 1234,
      () => write.notes(path),
    );
    expect(standing(path)).toEqual([0, 1235, 0o664]);
    expect(said).toEqual([expect.stringContaining('belonged to another user, and is yours now')]);
  });

  test.runIf(isOwner)('neither, and then another group is let do nothing', () => {
    const path = theirs('group.bowl');
    refusing(
      () => true,
      () => write.notes(path),
    );
    expect(standing(path)).toEqual([0, process.getgid?.(), 0o604]);
    expect(said).toHaveLength(2);
  });
});
