import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import {
  chmodSync,
  existsSync,
  linkSync,
  lstatSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { hostname } from 'node:os';
import { dirname, join, relative } from 'node:path';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { run } from '../../src/cli/program.ts';
import { isRefusal } from '../../src/cli/refusal.ts';
import { keepCurrent } from '../../src/cli/watch/keep-current.ts';
import { openPageFolder, type PageFolder } from '../../src/cli/watch/page-folder.ts';
import { JOURNAL, useProgram } from '../journeys/program.ts';
import { stateOf } from './tree.ts';

const program = await useProgram();

beforeAll(() => {
  for (const stream of [process.stdout, process.stderr]) vi.spyOn(stream, 'write').mockReturnValue(true);
});
afterAll(() => vi.restoreAllMocks());

const DAY = ['--on', '2026-11-25'];
const OPEN = `visit 2026-11-25 14:00 wren-abbott by io
  bowl A 40 clay + 20vol 1:2
   on 14:20-14:30 A hairline
`;

/** What is not the program's: notes, pages and other files, each of which a link of the folder may lead to. */
const OUTSIDE = {
  'victim.bowl': OPEN,
  'victim.txt': OPEN,
  'victim.html': '<p>theirs</p>\n',
  'cards/a.html': '<p>theirs</p>\n',
  'cards/wren-abbott.html': '<p>theirs</p>\n',
  'cards/about-these-pages.txt': 'theirs',
};

type Place = { readonly folder: string; readonly outside: string };

const placeOf = (): Place => ({
  folder: program.folder({ ...JOURNAL, 'today.bowl': OPEN }),
  outside: program.folder(OUTSIDE),
});

/** A way in which something hostile stands at a path; false where this system cannot have it. */
type Kind = { readonly says: string; readonly make: (path: string, outside: string) => boolean };

const link = (target: string, path: string): true => {
  symlinkSync(target, path);
  return true;
};

const KINDS: readonly Kind[] = [
  { says: 'a link to notes outside', make: (path, outside) => link(join(outside, 'victim.bowl'), path) },
  { says: 'a link to a text outside', make: (path, outside) => link(join(outside, 'victim.txt'), path) },
  {
    says: 'a relative link to a page outside',
    make: (path, outside) => link(relative(dirname(path), join(outside, 'victim.html')), path),
  },
  { says: 'a link to a folder outside', make: (path, outside) => link(join(outside, 'cards'), path) },
  { says: 'a link to nothing yet, outside', make: (path, outside) => link(join(outside, 'new.bowl'), path) },
  {
    says: 'a link to a link that leads outside',
    make: (path, outside) => {
      symlinkSync(join(outside, 'victim.bowl'), `${path}-way`);
      return link(`${path}-way`, path);
    },
  },
  { says: 'a link to itself', make: (path) => link(path, path) },
  {
    says: 'a hard link to a file outside',
    make: (path, outside) => {
      linkSync(join(outside, 'victim.bowl'), path);
      return true;
    },
  },
  { says: 'a pipe', make: (path) => spawnSync('mkfifo', [path]).status === 0 },
  { says: 'a device', make: (path) => spawnSync('mknod', [path, 'c', '1', '3']).status === 0 },
  {
    says: 'a folder',
    make: (path) => {
      mkdirSync(path);
      return true;
    },
  },
];

/** Everything outside but what a hard link that goes changes by itself: the number of links, and so the time of status. */
const unchanged = (outside: string): Record<string, string> =>
  Object.fromEntries(
    Object.entries(stateOf(outside)).map(([name, state]) => [
      name,
      state
        .split(' ')
        .filter((_, at) => at !== 6)
        .join(' '),
    ]),
  );

/** Runs a command, which may refuse but not fail; gives whether it refused. */
const refuses = async (words: readonly string[]): Promise<boolean> => {
  try {
    await run(words);
    return false;
  } catch (error) {
    if (!isRefusal(error)) throw error;
    return true;
  }
};

const HERE = createHash('sha1').update(hostname()).digest('hex').slice(0, 8);

/** The names that a command writes, and the command. */
const WRITTEN: readonly (readonly [string, (folder: string) => readonly string[]])[] = [
  ['today.bowl', (folder) => ['now', 'check A gold', folder, '--at', '14:40', ...DAY]],
  [`.today.bowl.${process.pid}.new`, (folder) => ['now', 'check A gold', folder, '--at', '14:40', ...DAY]],
  [
    `.today.bowl.asks-0-${HERE}-${process.pid}.new`,
    (folder) => ['now', 'check A gold', folder, '--at', '14:40', ...DAY],
  ],
  [
    `.today.bowl.turn-1-${HERE}-${process.pid}.new`,
    (folder) => ['now', 'check A gold', folder, '--at', '14:40', ...DAY],
  ],
  ['today.bowl', (folder) => ['neaten', folder]],
  ['today.bowl', (folder) => ['neaten', join(folder, 'today.bowl')]],
  ['deep', (folder) => ['neaten', folder]],
  ['clients.bowl', (folder) => ['rebook', 'wren-abbott', folder, '--append', 'auto']],
  ['next.bowl', (folder) => ['rebook', 'wren-abbott', folder, '--append', join(folder, 'next.bowl')]],
  ['deep', (folder) => ['rebook', 'wren-abbott', folder, '--append', join(folder, 'deep', 'next.bowl')]],
  ['card.html', (folder) => ['card', 'wren-abbott', folder, '-o', join(folder, 'card.html'), ...DAY]],
  ['card.md', (folder) => ['card', 'wren-abbott', folder, '-o', join(folder, 'card.md'), ...DAY]],
  ['usage.csv', (folder) => ['usage', folder, '--csv', '-o', join(folder, 'usage.csv'), ...DAY]],
  ['due.ics', (folder) => ['due', folder, '--ics', '-o', join(folder, 'due.ics'), ...DAY]],
  ['deep', (folder) => ['card', 'wren-abbott', folder, '-o', join(folder, 'deep', 'card.html'), ...DAY]],
  [
    `.card.html.${process.pid}.new`,
    (folder) => ['card', 'wren-abbott', folder, '-o', join(folder, 'card.html'), ...DAY],
  ],
];

describe.each(KINDS)('$says', ({ says, make }) => {
  test.each(WRITTEN)('at %s changes nothing outside', async (name, words) => {
    const { folder, outside } = placeOf();
    rmSync(join(folder, name), { force: true });
    const before = stateOf(outside);
    if (!make(join(folder, name), outside)) return;
    const linked = says.startsWith('a hard link');
    await refuses(words(folder));
    if (linked) {
      for (const [file, text] of Object.entries(OUTSIDE)) expect(readFileSync(join(outside, file), 'utf8')).toBe(text);
      expect(readdirSync(outside).sort()).toEqual(['cards', 'victim.bowl', 'victim.html', 'victim.txt']);
    } else expect(stateOf(outside)).toEqual(before);
    expect(readdirSync(folder).filter((one) => /(?:asks|turn)-\d+-.*\.new$/.test(one) && one !== name)).toEqual([]);
  });
});

test('a link at the name of new notes’ folder is not filled', async () => {
  const { folder, outside } = placeOf();
  const empty = program.folder();
  symlinkSync(empty, join(folder, 'salon'));
  const spy = vi.spyOn(process, 'cwd').mockReturnValue(folder);
  try {
    expect(await refuses(['new', join(folder, 'salon'), ...DAY])).toBe(true);
    expect(await refuses(['new', join(folder, 'salon', 'more'), ...DAY])).toBe(true);
  } finally {
    spy.mockRestore();
  }
  expect([readdirSync(empty), existsSync(outside)]).toEqual([[], true]);
});

/** The names that watching writes, from the folder of the notes. */
const PAGES = [
  'pages',
  'pages/about-these-pages.txt',
  'pages/.gitignore',
  'pages/index.html',
  'pages/findings.html',
  'pages/clients',
  'pages/clients/wren-abbott.html',
  'pages/clients/gone.html',
  `pages/.index.html.${process.pid}.new`,
  `pages/.about-these-pages.txt.${process.pid}.new`,
  `pages/clients/.wren-abbott.html.${process.pid}.new`,
];

/** Watches a folder for as long as the first build and two looks take. */
const watchOnce = async (folder: string, between: (pages: PageFolder) => void = () => undefined): Promise<void> => {
  let pages: PageFolder;
  try {
    pages = openPageFolder(join(folder, 'pages'), folder);
  } catch (error) {
    if (!isRefusal(error)) throw error;
    return;
  }
  const told = { progress: () => undefined, changed: () => undefined, trouble: () => undefined };
  const kept = await keepCurrent({ root: folder, folder: pages, dayOf: () => '2026-11-25', events: false, told });
  await kept.stop();
  between(pages);
  for (let look = 0; look < 2; look++) {
    try {
      const cards = new Set(['wren-abbott', 'wren-tarn', 'otto-lund'].map((name) => `clients/${name}.html`));
      for (const name of pages.lost(cards)) pages.put(name, kept.page(name) ?? '');
    } catch (error) {
      expect((error as NodeJS.ErrnoException).code).toMatch(/^E/);
    }
  }
};

describe.each(KINDS)('watching, with $says', ({ says, make }) => {
  const check = (outside: string, before: Record<string, string>): void => {
    if (!says.startsWith('a hard link')) expect(stateOf(outside)).toEqual(before);
    else
      for (const [file, text] of Object.entries(OUTSIDE)) expect(readFileSync(join(outside, file), 'utf8')).toBe(text);
    expect(Object.keys(unchanged(outside))).toEqual(Object.keys(before));
  };

  test.each(PAGES)('from the start at %s changes nothing outside', async (name) => {
    const { folder, outside } = placeOf();
    if (name !== 'pages') await watchOnce(folder);
    rmSync(join(folder, name), { recursive: true, force: true });
    const before = stateOf(outside);
    if (!make(join(folder, name), outside)) return;
    await watchOnce(folder);
    check(outside, before);
  });

  test.each(PAGES)('that comes meanwhile at %s changes nothing outside', async (name) => {
    const { folder, outside } = placeOf();
    const before = stateOf(outside);
    let isMade = true;
    await watchOnce(folder, () => {
      rmSync(join(folder, name), { recursive: true, force: true });
      isMade = make(join(folder, name), outside);
    });
    if (isMade) check(outside, before);
  });
});

test('a page that a link replaced stands as a page again, and so does the folder of the cards', async () => {
  const { folder, outside } = placeOf();
  const card = join(folder, 'pages', 'clients', 'wren-abbott.html');
  let html = '';
  await watchOnce(folder, () => {
    html = readFileSync(card, 'utf8');
    rmSync(join(folder, 'pages', 'clients'), { recursive: true });
    symlinkSync(join(outside, 'cards'), join(folder, 'pages', 'clients'));
  });
  expect(lstatSync(dirname(card)).isDirectory()).toBe(true);
  expect(readFileSync(card, 'utf8')).toBe(html);
});

describe('names that are hard to keep', () => {
  const LONG = `${'é'.repeat(125)}.bowl`;
  test.each([LONG, 'a\nb.bowl', ' .bowl', '…\u202egnp.bowl', '-o.bowl', "d'arcy $(x) `y`.bowl"])('%j', async (name) => {
    expect(Buffer.byteLength(name)).toBeLessThan(256);
    const folder = program.folder({ ...JOURNAL, [name]: OPEN });
    await run(['now', 'check A gold', folder, '--at', '14:40', ...DAY]);
    await run(['neaten', folder]);
    expect(readFileSync(join(folder, name), 'utf8')).toContain('\n  check 14:40 A gold\n');
    const page = join(folder, name.replace(/bowl$/, 'html'));
    await run(['card', 'wren-abbott', folder, '-o', page, ...DAY]);
    expect(readFileSync(page, 'utf8')).toContain('Wren Abbott');
    expect(readdirSync(folder).filter((one) => one.endsWith('.new'))).toEqual([]);
  });

  test('one that is too long is refused with the reason', async () => {
    const folder = program.folder({ ...JOURNAL });
    const words = ['card', 'wren-abbott', folder, '-o', join(folder, `${'a'.repeat(260)}.html`), ...DAY];
    await expect(run(words)).rejects.toThrow('its name is too long');
  });
});

describe('pages are as private as the notes', () => {
  const modeOf = (path: string): number => statSync(path).mode & 0o777;

  test('a page that -o makes, and one that it replaces', () => {
    const folder = program.folder(JOURNAL);
    for (const above of [folder, join(folder, '..')]) chmodSync(above, 0o755);
    const page = join(folder, 'card.html');
    // As a program of its own: the notes of a run are all that it has read.
    const make = () => expect(program.run(['card', 'wren-abbott', folder, '-o', page, ...DAY]).code).toBe(0);
    const umask = process.umask(0o022);
    try {
      make();
      expect(modeOf(page)).toBe(0o644);
      chmodSync(join(folder, 'clients.bowl'), 0o640);
      make();
      expect(modeOf(page)).toBe(0o640);
      rmSync(page);
      chmodSync(folder, 0o700);
      make();
      expect(modeOf(page)).toBe(0o600);
    } finally {
      process.umask(umask);
    }
  });

  test('those that watching makes, their folders, and again when a note is closed to others later', async () => {
    const folder = program.folder(JOURNAL);
    for (const above of [folder, join(folder, '..')]) chmodSync(above, 0o755);
    const modes = (): number[] =>
      ['', 'index.html', 'clients', 'clients/wren-abbott.html', 'about-these-pages.txt'].map((name) =>
        modeOf(join(folder, 'pages', name)),
      );
    const umask = process.umask(0o022);
    try {
      await watchOnce(folder);
      expect(modes()).toEqual([0o755, 0o644, 0o755, 0o644, 0o644]);
      chmodSync(join(folder, 'clients.bowl'), 0o600);
      await watchOnce(folder);
      expect(modes().slice(0, 4)).toEqual([0o700, 0o600, 0o700, 0o600]);
    } finally {
      process.umask(umask);
    }
  });
});

test('what stands in a folder of pages with a mark that is not ours is not touched', () => {
  const folder = program.folder({
    ...JOURNAL,
    'pages/about-these-pages.txt': 'mine',
    'pages/clients/mine.html': 'mine',
  });
  const before = stateOf(folder);
  expect(() => openPageFolder(join(folder, 'pages'), folder)).toThrow('that is not of this program');
  expect(stateOf(folder)).toEqual(before);
});

test('everything at once, against every command', async () => {
  const { folder, outside } = placeOf();
  const at: readonly (readonly [string, string])[] = [
    ['linked.bowl', 'victim.bowl'],
    ['text.bowl', 'victim.txt'],
    ['more', ''],
    ['card.html', 'victim.html'],
    ['pages', 'cards'],
  ];
  for (const [name, target] of at) symlinkSync(join(outside, target), join(folder, name));
  spawnSync('mkfifo', [join(folder, 'pipe.bowl')]);
  const before = stateOf(outside);
  for (const words of [
    ['mix', '40 clay + 20vol 1:2', '--shelf', folder],
    ['card', 'wren-abbott', folder],
    ['card', 'wren-abbott', folder, '-o', join(folder, 'card.html')],
    ['clients', folder, '-o', join(folder, 'pages', 'clients.html')],
    ['prep', '2026-11-25', folder],
    ['rebook', 'otto-lund', folder, '--on', '2026-12-12', '--append', join(folder, 'linked.bowl')],
    ['check', folder],
    ['due', folder],
    ['usage', folder],
    ['money', folder],
    ['hindsight', 'lift', folder],
    ['shelf', folder],
    ['order', folder],
    ['trace', 'K2231', folder],
    ['now', 'check A gold', folder, '--client', 'wren-abbott', '--at', '14:40', ...DAY],
    ['neaten', folder],
    ['neaten', join(folder, 'linked.bowl')],
    ['new', join(folder, 'pages')],
  ])
    await refuses(words);
  await watchOnce(folder);
  expect(stateOf(outside)).toEqual(before);
});

test('a link within the notes is followed to text, and to nothing else', async () => {
  const folder = program.folder({ ...JOURNAL, 'kept/today.txt': OPEN, 'build.sh': 'x  \n', '.git/hook.bowl': 'x  \n' });
  symlinkSync('kept/today.txt', join(folder, 'today.bowl'));
  await run(['neaten', folder]);
  expect(readFileSync(join(folder, 'kept', 'today.txt'), 'utf8')).toContain('\n  on 14:20');
  for (const target of ['build.sh', '.git/hook.bowl']) {
    symlinkSync(target, join(folder, 'odd.bowl'));
    await expect(run(['neaten', folder])).rejects.toThrow('is no file of notes');
    expect(readFileSync(join(folder, target), 'utf8')).toBe('x  \n');
    rmSync(join(folder, 'odd.bowl'));
  }
  writeFileSync(join(folder, 'today.bowl'), OPEN);
});
