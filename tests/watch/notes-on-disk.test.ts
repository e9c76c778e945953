import { mkdirSync, renameSync, truncateSync, unlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { type NotesOnDisk, notesOnDisk } from '../../src/cli/watch/notes-on-disk.ts';
import { tempFolder } from './watching.ts';

/** Two files that are known, with a clock of the test's own. */
const known = (): { readonly a: string; readonly b: string; readonly root: string; readonly disk: NotesOnDisk } => {
  const root = tempFolder();
  const [a, b] = [join(root, 'a.bowl'), join(root, 'b.bowl')];
  writeFileSync(a, 'client wren\n');
  writeFileSync(b, 'client otto\n');
  const disk = notesOnDisk(root, join(root, 'pages'));
  expect([...disk.look(0).put.keys()]).toEqual([a, b]);
  return { a, b, root, disk };
};

const putIn = (disk: NotesOnDisk, now: number): [string, string | undefined][] =>
  [...disk.look(now).put].map(([path, bytes]) => [path, bytes && Buffer.from(bytes).toString()]);

describe('a file that is away', () => {
  test('keeps its place for 700 ms, and another look is asked for when they are over', () => {
    const { a, disk } = known();
    unlinkSync(a);
    expect(disk.look(1_000)).toMatchObject({ put: new Map(), again: 700 });
    expect(disk.look(1_699)).toMatchObject({ put: new Map(), again: 1 });
    expect(putIn(disk, 1_700)).toEqual([[a, undefined]]);
    expect(disk.look(1_701)).toMatchObject({ put: new Map(), again: undefined });
  });

  test('and comes back with other content is one change; with the same, none', () => {
    const { a, b, disk } = known();
    unlinkSync(a);
    unlinkSync(b);
    expect(putIn(disk, 1_000)).toEqual([]);
    writeFileSync(a, 'client wren "Wren"\n');
    writeFileSync(b, 'client otto\n');
    expect(putIn(disk, 1_690)).toEqual([[a, 'client wren "Wren"\n']]);
    unlinkSync(a);
    // The time of grace begins anew.
    expect(putIn(disk, 1_710)).toEqual([]);
    expect(putIn(disk, 2_410)).toEqual([[a, undefined]]);
  });

  test('and stands elsewhere was moved, at once', () => {
    const { a, root, disk } = known();
    mkdirSync(join(root, 'more'));
    renameSync(a, join(root, 'more', 'a.bowl'));
    expect(putIn(disk, 1_000)).toEqual([
      [join(root, 'more', 'a.bowl'), 'client wren\n'],
      [a, undefined],
    ]);
  });
});

test('a file cut to nothing keeps its content for 700 ms', () => {
  const { a, disk } = known();
  truncateSync(a, 0);
  expect(disk.look(1_000)).toMatchObject({ put: new Map(), again: 700 });
  expect(putIn(disk, 1_650)).toEqual([]);
  expect(putIn(disk, 1_700)).toEqual([[a, '']]);
});

test('a file named beside the others is looked at alone', () => {
  const { a, b, disk } = known();
  writeFileSync(a, 'client wren "Wren"\n');
  writeFileSync(b, 'client otto "Otto"\n');
  expect([...disk.look(1_000, new Set([b])).put.keys()]).toEqual([b]);
  expect([...disk.look(1_001).put.keys()]).toEqual([a]);
});

test('the folder of the notes away loses nothing', () => {
  const { a, root, disk } = known();
  renameSync(root, `${root}-away`);
  expect(disk.look(1_000)).toMatchObject({ isThere: false, put: new Map() });
  expect(disk.look(9_000)).toMatchObject({ isThere: false, put: new Map() });
  renameSync(`${root}-away`, root);
  writeFileSync(a, 'client wren "Wren"\n');
  expect([...disk.look(9_001).put.keys()]).toEqual([a]);
});
