import { chmodSync, mkdirSync, mkdtempSync, readdirSync, realpathSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { journalOf } from '../../src/cli/find-journal.ts';
import { journalFiles } from '../../src/cli/open-journal.ts';
import { dueMarkdown } from '../../src/pages/due-page.ts';
import { dueClients } from '../../src/reckon/ahead/due.ts';
import { lapsingTests } from '../../src/reckon/ahead/lapsing.ts';
import { reckonAll } from '../../src/reckon/visit.ts';
import { demoJournal } from '../pages/compiled.ts';

const made: string[] = [];
afterAll(() => {
  for (const folder of made) rmSync(folder, { recursive: true });
});

const treeOf = (files: Readonly<Record<string, string>>): string => {
  const root = realpathSync(mkdtempSync(join(tmpdir(), 'bowl-')));
  made.push(root);
  for (const [name, text] of Object.entries(files)) {
    mkdirSync(dirname(join(root, name)), { recursive: true });
    writeFileSync(join(root, name), text);
  }
  return root;
};

const SALON = 'salon harbour "Harbour Row"\n';
const CLIENT = 'client wren-abbott "Wren Abbott"\n';

describe('the journal that a path belongs to', () => {
  const root = treeOf({
    'salon.bowl': SALON,
    'clients/wren.bowl': CLIENT,
    'clients/old/beth.bowl': 'client beth-tarn "Beth, of another salon"\n',
  });

  test.each(['clients', 'clients/old', 'clients/wren.bowl', 'clients/old/beth.bowl'])(
    'of %s is the folder of the salon',
    (path) => {
      expect(journalOf(join(root, path))).toEqual({ folder: root, isOther: true });
    },
  );

  test('is the folder asked for, where it opens the salon itself', () => {
    expect(journalOf(root)).toEqual({ folder: root, isOther: false });
  });

  test('is none where nothing above opens a salon, and past a folder with `.git`', () => {
    const bare = treeOf({ 'clients/wren.bowl': CLIENT });
    expect(journalOf(join(bare, 'clients'))).toBeUndefined();
    const kept = treeOf({ 'salon.bowl': SALON, 'mine/.git/HEAD': '', 'mine/clients/wren.bowl': CLIENT });
    expect(journalOf(join(kept, 'mine/clients'))).toBeUndefined();
    writeFileSync(join(kept, 'mine/salon.bowl'), SALON);
    expect(journalOf(join(kept, 'mine/clients'))?.folder).toBe(join(kept, 'mine'));
  });

  test('is none in a folder that everyone may write to', () => {
    const open = treeOf({ 'salon.bowl': SALON, 'clients/wren.bowl': CLIENT });
    chmodSync(open, 0o777);
    expect(journalOf(join(open, 'clients'))).toBeUndefined();
  });

  test('is none past the home folder', () => {
    const home = treeOf({ 'salon.bowl': SALON, 'home/clients/wren.bowl': CLIENT });
    const before = process.env.HOME;
    process.env.HOME = join(home, 'home');
    try {
      expect(journalOf(join(home, 'home/clients'))).toBeUndefined();
    } finally {
      process.env.HOME = before;
    }
  });

  test('what was named is shown, all is read, and a path outside a journal stands for itself', () => {
    const { files, shown } = journalFiles([join(root, 'clients/wren.bowl')]);
    expect(files).toHaveLength(3);
    expect(files.filter(shown.has)).toEqual([join(root, 'clients/wren.bowl')]);
    const bare = treeOf({ 'clients/wren.bowl': CLIENT });
    expect(journalFiles([join(bare, 'clients')])).toMatchObject({
      files: [join(bare, 'clients/wren.bowl')],
      shown: { isAll: true },
    });
  });
});

describe('the demo', () => {
  const demo = realpathSync('journals/harbour-row');
  const paths = (readdirSync(demo, { recursive: true, encoding: 'utf8' }) as string[]).filter(
    (name) => name.endsWith('.bowl') || statSync(join(demo, name)).isDirectory(),
  );
  const whole = journalFiles([demo]).files;

  test('is read whole from each of its folders and files, so that every page says the same', () => {
    expect(paths.length).toBeGreaterThan(50);
    for (const path of paths) expect(journalFiles([join(demo, path)]).files, path).toEqual(whole);
  });

  test('says the same of who is due whoever is shown', () => {
    const journal = demoJournal();
    const [on, until] = ['2026-11-25', '2026-12-23'];
    const all = reckonAll(journal);
    const rowsOf = (names: readonly string[]): string[] => {
      const some = new Map([...all].filter(([name]) => names.includes(name)));
      const clients = new Map([...journal.clients].filter(([name]) => names.includes(name)));
      const part = { ...journal, clients };
      const page = dueMarkdown(
        part,
        { ...dueClients(some, on, until), lapsing: lapsingTests(part, some, on, until) },
        { on, until },
      );
      return page.split('\n').filter((line) => /^\| [A-Z]/.test(line) && line.includes('20'));
    };
    const every = rowsOf([...journal.clients.keys()]).map((row) => row.replace(/\s+/g, ' '));
    // A column that nobody needs is left out, so only rows of the same columns are compared.
    for (const name of journal.clients.keys())
      for (const row of rowsOf([name]))
        if (row.split('|').length === 8) expect(every).toContain(row.replace(/\s+/g, ' '));
  });
});
