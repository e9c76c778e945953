import { spawnSync } from 'node:child_process';
import {
  appendFileSync,
  chmodSync,
  existsSync,
  mkdirSync,
  readdirSync,
  renameSync,
  rmSync,
  statSync,
  symlinkSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { isDeepStrictEqual } from 'node:util';
import { describe, expect, test } from 'vitest';
import { cardFile } from '../../src/cli/watch/card-file.ts';
import { openPageFolder, type PageFolder } from '../../src/cli/watch/page-folder.ts';
import { endsCold, notesOf, pagesIn, SHELF, sleep, tempFolder, until, watchFolder, writeAt } from './watching.ts';

const FILES = { 'shelf.bowl': SHELF, 'a.bowl': notesOf('wren'), 'b.bowl': notesOf('otto') };

/** A place for pages that can be filled up, and what to do with it. */
type SmallDisk = {
  readonly out: string;
  readonly wrap: (folder: PageFolder) => PageFolder;
  readonly fill: () => void;
  readonly free: () => void;
  readonly end: () => void;
};

/** The cards of a folder of pages, by their names in it. */
const clientsOf = (pages: Readonly<Record<string, string>>): Record<string, string> =>
  Object.fromEntries(
    Object.entries(pages).flatMap(([name, html]) =>
      name.startsWith('clients/') ? [[name.slice('clients/'.length), html]] : [],
    ),
  );

const refusesAll = (): never => {
  throw Object.assign(new Error('no space left on device'), { code: 'ENOSPC' });
};

/** A disk of its own in the memory where the tests may mount one; elsewhere a folder whose writing fails as a full disk's. */
const smallDisk = (): SmallDisk => {
  const top = tempFolder();
  const [out, filler] = [join(top, 'pages'), join(top, 'filler')];
  const isDisk = spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=256k', 'tmpfs', top]).status === 0;
  let full = false;
  const fill = (): void => {
    full = true;
    try {
      while (isDisk) appendFileSync(filler, Buffer.alloc(4_096));
    } catch (error) {
      expect(error).toMatchObject({ code: 'ENOSPC' });
    }
  };
  return {
    out,
    wrap: (folder) =>
      isDisk ? folder : { ...folder, put: (name, html) => (full ? refusesAll() : folder.put(name, html)) },
    fill,
    free: () => {
      full = false;
      rmSync(filler, { force: true });
    },
    end: () => void (isDisk && spawnSync('umount', ['-l', top])),
  };
};

describe('a folder for pages', () => {
  test('that holds notes is refused, at any depth and through a link', () => {
    const top = tempFolder();
    writeAt(join(top, 'notes', 'a.bowl'), '');
    writeAt(join(top, 'out', 'deep', 'b.bowl'), '');
    symlinkSync(join(top, 'out'), join(top, 'link'));
    for (const out of ['out', 'link'])
      expect(() => openPageFolder(join(top, out), join(top, 'notes'))).toThrow('holds notes (`deep/b.bowl`)');
    for (const out of ['notes', '.'])
      expect(() => openPageFolder(join(top, out), join(top, 'notes'))).toThrow('holds the notes themselves');
    expect(readdirSync(join(top, 'out'))).toEqual(['deep']);
  });

  test('that holds other files is refused, and nothing in it is touched', () => {
    const top = tempFolder();
    writeAt(join(top, 'out', 'letter.txt'), 'x');
    mkdirSync(join(top, 'notes'));
    expect(() => openPageFolder(join(top, 'out'), join(top, 'notes'))).toThrow('holds other files (`letter.txt`)');
    expect(readdirSync(join(top, 'out'))).toEqual(['letter.txt']);
  });

  test('that cannot be made is refused with the reason', () => {
    const top = tempFolder();
    writeAt(join(top, 'file'), '');
    mkdirSync(join(top, 'notes'));
    expect(() => openPageFolder(join(top, 'file', 'out'), join(top, 'notes'))).toThrow(
      'cannot be used for pages: a part of its path is a file.',
    );
  });

  test.concurrent('is used again, without cards of clients that are no more and without what a killed run left', async () => {
    const first = await watchFolder(FILES);
    await first.stop();
    const gone = join(first.out, 'clients', 'gone.html');
    const left = join(first.out, '.index.html.999999999.new');
    const own = join(first.out, `.index.html.${process.pid}.new`);
    for (const path of [gone, left, own]) writeAt(path, 'x');
    const again = await watchFolder({}, { root: first.root });
    expect(again.kept.first.pages).toBe(0);
    expect([gone, left, own].map(existsSync)).toEqual([false, false, true]);
    rmSync(own);
    await endsCold(again);
  });

  test('is left out of version control', () => {
    const top = tempFolder();
    mkdirSync(join(top, 'notes'));
    openPageFolder(join(top, 'notes', 'pages'), join(top, 'notes'));
    expect(readdirSync(join(top, 'notes', 'pages')).sort()).toEqual(['.gitignore', 'about-these-pages.txt', 'clients']);
  });
});

describe('while watching', () => {
  test.concurrent('pages inside the tree that is watched set nothing off', async () => {
    const watched = await watchFolder(FILES, { out: undefined });
    watched.write('a.bowl', notesOf('wren', 2));
    await watched.shows('wren', 2);
    await until('the change is told', () => watched.changes.length > 0);
    writeAt(join(watched.out, 'clients', 'stray.bowl'), notesOf('nia'));
    watched.kept.look();
    await sleep(600);
    expect(watched.changes).toHaveLength(1);
    expect(watched.page('clients/nia.html')).toBe('');
  });

  test.concurrent('a folder of pages that is deleted is made again, with every page', async () => {
    const watched = await watchFolder(FILES);
    rmSync(watched.out, { recursive: true });
    await watched.shows('otto', 1);
    await until('the index', () => watched.page('index.html') !== '');
    rmSync(join(watched.out, 'clients', 'wren.html'));
    await watched.shows('wren', 1);
    await endsCold(watched);
  });

  test.concurrent.each([{ events: true }, { events: false }])(
    'a page that something else overwrites, cuts short, empties or adds is right again: %o',
    async ({ events }) => {
      const watched = await watchFolder(FILES, { events });
      const at = (name: string): string => join(watched.out, name);
      const cold = pagesIn(watched.out);
      const own = ['about-these-pages.txt', '.gitignore'].map((name) => [name, watched.page(name)] as const);
      const faults: readonly (() => void)[] = [
        () => writeAt(at('clients/wren.html'), '<p>theirs</p>'),
        () => truncateSync(at('clients/otto.html'), 100),
        () => writeAt(at('index.html'), ''),
        () => appendFileSync(at('findings.html'), '<p>theirs</p>'),
        () => writeAt(at('clients/stray.html'), '<p>theirs</p>'),
        () => writeAt(at('clients/wren.html'), (cold['clients/wren.html'] ?? '').replace('40', '90')),
        () => chmodSync(at('clients/wren.html'), 0o666),
        () => symlinkSync(at('index.html'), at('clients/link.html')),
        () => renameSync(at('clients/wren.html'), at('clients/otto.html')),
        () => rmSync(at('clients'), { recursive: true }),
        () => renameSync(at('clients'), at('cards')),
        () => own.forEach(([name]) => void writeAt(at(name), 'theirs')),
      ];
      for (const [index, fault] of faults.entries()) {
        fault();
        watched.kept.look();
        await until(`the pages after fault ${index}`, () => {
          try {
            return (
              isDeepStrictEqual(pagesIn(join(watched.out, 'clients')), clientsOf(cold)) &&
              ['index.html', 'findings.html'].every((name) => watched.page(name) === cold[name]) &&
              own.every(([name, text]) => watched.page(name) === text)
            );
          } catch {
            return false;
          }
        });
      }
      expect(watched.changes).toEqual([]);
      expect(statSync(at('clients/wren.html')).mode & 0o022 & ~(0o666 & ~process.umask())).toBe(0);
    },
  );

  test.concurrent('a page that cannot be written stays as it was, and follows when it can be', async () => {
    const watched = await watchFolder(FILES);
    const before = watched.page('clients/wren.html');
    // Something in the place of the file that is written first.
    const blocked = join(watched.out, 'clients', `.wren.html.${process.pid}.new`);
    mkdirSync(blocked);
    watched.write('a.bowl', notesOf('wren', 2));
    watched.write('b.bowl', notesOf('otto', 2));
    await watched.shows('otto', 2);
    await until('it is told', () => watched.troubles.length > 0);
    expect(watched.page('clients/wren.html')).toBe(before);
    rmSync(blocked, { recursive: true });
    await watched.shows('wren', 2);
    expect(watched.troubles).toHaveLength(1);
    await endsCold(watched);
  });

  test.concurrent('a full disk is told of once; old pages stand until there is room', async () => {
    const disk = smallDisk();
    try {
      const watched = await watchFolder(FILES, disk);
      const before = pagesIn(watched.out);
      disk.fill();
      watched.write('a.bowl', notesOf('wren', 2));
      watched.write('b.bowl', notesOf('otto', 2));
      await until('it is told', () => watched.troubles.length > 0);
      watched.kept.look();
      await sleep(300);
      expect(watched.troubles).toEqual([
        'Pages cannot be written: the disk is full. The old ones stand, and it is tried again.',
      ]);
      expect(pagesIn(watched.out)).toEqual(before);
      disk.free();
      await watched.shows('wren', 2);
      await watched.shows('otto', 2);
      await endsCold(watched);
      await watched.stop();
    } finally {
      disk.end();
    }
  });

  test.concurrent('two watchers with one folder of pages agree', async () => {
    const one = await watchFolder(FILES);
    const two = await watchFolder({}, { root: one.root, out: one.out });
    for (const mark of [2, 3, 4]) {
      one.write('a.bowl', notesOf('wren', mark));
      await one.shows('wren', mark);
    }
    await until('both have told', () => one.changes.length > 0 && two.changes.length > 0);
    rmSync(join(one.root, 'b.bowl'));
    await until('the card goes', () => one.page('clients/otto.html') === '');
    await until('both have let go', () =>
      [one, two].every(({ kept }) => !kept.state().settled.journal.clients.has('otto')),
    );
    await Promise.all([one.stop(), two.stop()]);
    expect([...one.troubles, ...two.troubles]).toEqual([]);
    await endsCold(one);
  });
});

describe('the file of a card', () => {
  test('is plain for a plain name', () => {
    expect(cardFile('wren-abbott')).toBe('clients/wren-abbott.html');
    expect(cardFile('zoë')).toBe('clients/zoë.html');
  });

  test('never leads out of its folder, nor to a device, nor is too long', () => {
    for (const name of ['../../etc/passwd', 'a/b', 'a\\b', '..', 'con', 'nul', 'com1', 'é'.repeat(400), '\0', ''])
      expect(cardFile(name)).toMatch(/^clients\/[\p{L}\p{N}_-]{0,180}\.html$/u);
  });

  test('is another for every name', () => {
    const names = ['a_b', 'a_5f_b', 'a.b', 'a b', 'a/b', 'con', '_con', 'x'.repeat(300), 'x'.repeat(301)];
    expect(new Set(names.map(cardFile)).size).toBe(names.length);
    expect(new Set(names.map(cardFile)).size).toBeGreaterThan(8);
  });
});

test.concurrent('a name that is no file name has a card that the index leads to', async () => {
  const watched = await watchFolder({ 'a.bowl': notesOf("d'arcy.o") });
  const name = readdirSync(join(watched.out, 'clients'))[0] ?? '';
  expect(name).toMatch(/^[\w-]+\.html$/);
  expect(watched.page('index.html')).toContain(`href="clients/${name}"`);
  writeFileSync(join(watched.root, 'b.bowl'), notesOf('zoë'));
  await watched.shows('zoë', 1);
  await until('the index', () => watched.page('index.html').includes('href="clients/zo%C3%AB.html"'));
});
