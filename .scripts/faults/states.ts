import { spawnSync } from 'node:child_process';
import {
  appendFileSync,
  chmodSync,
  closeSync,
  linkSync,
  mkdirSync,
  openSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  symlinkSync,
  truncateSync,
  unlinkSync,
  utimesSync,
  writeFileSync,
  writeSync,
} from 'node:fs';
import { notesOf, type Place, SHELF, type State, sleep } from './place.ts';

/** Milliseconds for which editors and sync clients were seen to leave a file away, and those after which it counts as gone. */
const SHORT = 300;
const LONG = 1_200;

/** Puts content in the place of a file by a rename, from a name beside it. */
const renameOver = ({ at }: Place, path: string, text: string, by = `${path}.tmp`): void => {
  writeFileSync(at(by), text);
  renameSync(at(by), at(path));
};

const git = (place: Place, ...words: string[]): void => {
  const who = ['-c', 'user.name=t', '-c', 'user.email=t@example.invalid', '-c', 'commit.gpgsign=false'];
  const { status, stderr } = spawnSync('git', [...who, ...words], { cwd: place.root, encoding: 'utf8' });
  if (status !== 0) throw new Error(`git ${words.join(' ')}: ${stderr}`);
};

const CONFLICT = `<<<<<<< mine\n${notesOf('wren', 2)}=======\n${notesOf('wren', 3)}>>>>>>> theirs\n`;

/** How editors and people save a file. */
const SAVES: readonly State[] = [
  {
    name: 'written over in place',
    act: ({ write }) => write('a.bowl', notesOf('wren', 2)),
    shows: { wren: 2, otto: 1 },
  },
  {
    name: 'added to at its end',
    act: ({ at }) => appendFileSync(at('a.bowl'), notesOf('nia', 2)),
    shows: { wren: 1, nia: 2 },
  },
  { name: 'the same bytes written again', act: ({ write }) => write('a.bowl', notesOf('wren')), shows: { wren: 1 } },
  {
    name: 'written slowly, in pieces',
    act: async ({ at }) => {
      const handle = openSync(at('a.bowl'), 'w');
      for (const piece of notesOf('wren', 2).match(/[\s\S]{1,24}/g) ?? []) {
        writeSync(handle, piece);
        await sleep(60);
      }
      closeSync(handle);
    },
    shows: { wren: 2 },
  },
  {
    name: 'cut to nothing, written a little later',
    act: async ({ at }) => {
      truncateSync(at('a.bowl'), 0);
      await sleep(SHORT);
      writeFileSync(at('a.bowl'), notesOf('wren', 2));
    },
    shows: { wren: 2 },
  },
  {
    name: 'cut to nothing for good',
    act: ({ at }) => truncateSync(at('a.bowl'), 0),
    shows: { wren: undefined, otto: 1 },
  },
  {
    name: 'cut short in the middle of a line',
    act: ({ at }) => truncateSync(at('a.bowl'), notesOf('wren').indexOf('20vol')),
    shows: { wren: undefined, otto: 1 },
  },
  {
    name: 'replaced by a hidden file renamed over it',
    act: (place) => renameOver(place, 'a.bowl', notesOf('wren', 2), '.a.bowl.x7'),
    shows: { wren: 2 },
  },
  {
    name: 'replaced by a file of notes renamed over it',
    act: (place) => renameOver(place, 'a.bowl', notesOf('wren', 2), 'a (copy).bowl'),
    shows: { wren: 2 },
  },
  {
    name: 'replaced by a rename, twice at once',
    act: (place) => {
      renameOver(place, 'a.bowl', notesOf('wren', 2));
      renameOver(place, 'a.bowl', notesOf('wren', 3));
    },
    shows: { wren: 3 },
  },
  {
    name: 'saved with a probe file and a back-up that goes',
    act: ({ at }) => {
      writeFileSync(at('4913'), '');
      unlinkSync(at('4913'));
      renameSync(at('a.bowl'), at('a.bowl~'));
      writeFileSync(at('a.bowl'), notesOf('wren', 2));
      unlinkSync(at('a.bowl~'));
    },
    shows: { wren: 2 },
  },
  {
    name: 'saved with a back-up and a swap file that stay',
    act: ({ at }) => {
      writeFileSync(at('.a.bowl.swp'), 'x');
      renameSync(at('a.bowl'), at('a.bowl~'));
      writeFileSync(at('a.bowl'), notesOf('wren', 2));
    },
    shows: { wren: 2 },
  },
  {
    name: 'saved beside a lock that is a link to nowhere',
    act: (place) => {
      symlinkSync('io@chair.1', place.at('.#a.bowl'));
      writeFileSync(place.at('#a.bowl#'), notesOf('wren', 9));
      renameOver(place, 'a.bowl', notesOf('wren', 2));
    },
    shows: { wren: 2 },
  },
  {
    name: 'saved fifty times in a burst',
    act: (place) => {
      for (let mark = 2; mark <= 51; mark++) renameOver(place, 'a.bowl', notesOf('wren', mark));
    },
    shows: { wren: 51 },
  },
  {
    name: 'saved with a mark of UTF-8 and other line ends',
    act: ({ write }) => write('a.bowl', `\ufeff${notesOf('wren', 2).replaceAll('\n', '\r\n')}`),
    shows: { wren: 2 },
  },
  {
    name: 'saved in UTF-16',
    act: ({ write }) => write('a.bowl', Buffer.from(`\ufeff${notesOf('wren', 2)}`, 'utf16le')),
    shows: { otto: 1 },
  },
  {
    name: 'damaged bytes, then mended',
    act: async ({ write, shows }) => {
      write('a.bowl', Buffer.concat([Buffer.from(notesOf('wren', 2)), Buffer.from([0, 0xff, 0xfe, 0])]));
      await sleep(LONG);
      write('a.bowl', notesOf('wren', 3));
      await shows('wren', 3);
    },
    shows: { wren: 3 },
  },
  {
    name: 'left with the marks of a merge',
    act: ({ write }) => write('a.bowl', CONFLICT),
    shows: { otto: 1 },
  },
  {
    name: 'left with the marks of a merge, which are then resolved',
    act: async ({ write }) => {
      write('a.bowl', CONFLICT);
      await sleep(LONG);
      write('a.bowl', notesOf('wren', 3));
    },
    shows: { wren: 3, otto: 1 },
  },
];

/** How clients that keep two machines the same put files in place. */
const SYNCED: readonly State[] = [
  {
    name: 'taken away, and put back a little later',
    act: async ({ at }) => {
      unlinkSync(at('a.bowl'));
      await sleep(SHORT);
      writeFileSync(at('a.bowl'), notesOf('wren', 2));
    },
    shows: { wren: 2 },
  },
  {
    name: 'taken away for long, and put back',
    act: async ({ at }) => {
      unlinkSync(at('a.bowl'));
      await sleep(LONG);
      writeFileSync(at('a.bowl'), notesOf('wren', 2));
    },
    shows: { wren: 2 },
  },
  { name: 'taken away for good', act: ({ at }) => unlinkSync(at('a.bowl')), shows: { wren: undefined, otto: 1 } },
  {
    name: 'replaced by a rename with the same size and time',
    act: (place) => {
      const { atime, mtime } = statSync(place.at('a.bowl'));
      writeFileSync(place.at('a.tmp'), notesOf('wren', 2));
      utimesSync(place.at('a.tmp'), atime, mtime);
      renameSync(place.at('a.tmp'), place.at('a.bowl'));
    },
    shows: { wren: 2 },
  },
  {
    name: 'written over with the same size and time',
    act: ({ at }) => {
      const { atime, mtime } = statSync(at('a.bowl'));
      writeFileSync(at('a.bowl'), notesOf('wren', 2));
      utimesSync(at('a.bowl'), atime, mtime);
    },
    shows: { wren: 2 },
  },
  {
    name: 'with a time years ahead, then years back',
    act: async ({ at, write, shows }) => {
      write('a.bowl', notesOf('wren', 2));
      utimesSync(at('a.bowl'), new Date('2037-01-01'), new Date('2037-01-01'));
      await shows('wren', 2);
      write('a.bowl', notesOf('wren', 3));
      utimesSync(at('a.bowl'), new Date('2001-01-01'), new Date('2001-01-01'));
    },
    shows: { wren: 3 },
  },
  {
    name: 'a copy of a conflict that comes beside it',
    act: ({ write }) => write('a (conflict of nia).bowl', notesOf('wren', 2)),
    shows: { otto: 1 },
  },
  {
    name: 'brought from a hidden folder',
    act: ({ at }) => {
      mkdirSync(at('.sync'));
      writeFileSync(at('.sync/a.bowl'), notesOf('wren', 2));
      renameSync(at('.sync/a.bowl'), at('a.bowl'));
    },
    shows: { wren: 2 },
  },
  {
    name: 'two hundred files at once',
    act: ({ write }) => {
      for (let nth = 0; nth < 200; nth++) write(`many/c${nth}.bowl`, notesOf(`c${nth}`, 2));
    },
    shows: { wren: 1, c0: 2, c199: 2 },
  },
  {
    name: 'git: away from a branch and back at once, then edited',
    act: async (place) => {
      git(place, 'init', '-q', '-b', 'main');
      git(place, 'add', '-A');
      git(place, 'commit', '-qm', 'a');
      git(place, 'checkout', '-qb', 'other');
      rmSync(place.at('more'), { recursive: true });
      place.write('new/c.bowl', notesOf('nia'));
      git(place, 'add', '-A');
      git(place, 'commit', '-qm', 'b');
      await place.shows('nia', 1);
      for (let times = 0; times < 3; times++) {
        git(place, 'checkout', '-q', 'main');
        git(place, 'checkout', '-q', 'other');
      }
      git(place, 'checkout', '-q', 'main');
      await sleep(SHORT);
      place.write('more/b.bowl', notesOf('otto', 2));
    },
    shows: { wren: 1, otto: 2, nia: undefined },
  },
];

/** Names and folders that change. */
const MOVED: readonly State[] = [
  { name: 'renamed', act: ({ at }) => renameSync(at('a.bowl'), at('c.bowl')), shows: { wren: 1 } },
  { name: 'renamed in its case alone', act: ({ at }) => renameSync(at('a.bowl'), at('A.bowl')), shows: { wren: 1 } },
  {
    name: 'renamed and edited at once',
    act: ({ at }) => {
      renameSync(at('a.bowl'), at('c.bowl'));
      writeFileSync(at('c.bowl'), notesOf('wren', 2));
    },
    shows: { wren: 2 },
  },
  {
    name: 'two files that change places',
    act: ({ at }) => {
      renameSync(at('a.bowl'), at('x.tmp'));
      renameSync(at('more/b.bowl'), at('a.bowl'));
      renameSync(at('x.tmp'), at('more/b.bowl'));
    },
    shows: { wren: 1, otto: 1 },
  },
  {
    name: 'moved into another folder',
    act: ({ at }) => renameSync(at('a.bowl'), at('more/a.bowl')),
    shows: { wren: 1 },
  },
  {
    name: 'moved out of the notes, and another back in its place',
    act: async ({ at, aside }) => {
      renameSync(at('a.bowl'), aside('a.bowl'));
      await sleep(LONG);
      writeFileSync(aside('a.bowl'), notesOf('wren', 2));
      renameSync(aside('a.bowl'), at('a.bowl'));
    },
    shows: { wren: 2 },
  },
  {
    name: 'with another ending, so none of the notes',
    act: ({ at }) => renameSync(at('a.bowl'), at('a.txt')),
    shows: { wren: undefined },
  },
  { name: 'hidden by its name', act: ({ at }) => renameSync(at('a.bowl'), at('.a.bowl')), shows: { wren: undefined } },
  {
    name: 'a folder in its place, then the file again',
    act: async ({ at }) => {
      unlinkSync(at('a.bowl'));
      mkdirSync(at('a.bowl'));
      await sleep(LONG);
      rmSync(at('a.bowl'), { recursive: true });
      writeFileSync(at('a.bowl'), notesOf('wren', 2));
    },
    shows: { wren: 2 },
  },
  {
    name: 'a whole tree of new folders',
    act: ({ write }) => write('2026/11/25/c.bowl', notesOf('nia', 2)),
    shows: { nia: 2 },
  },
  {
    name: 'a folder that goes',
    act: ({ at }) => rmSync(at('more'), { recursive: true }),
    shows: { wren: 1, otto: undefined },
  },
  {
    name: 'a folder that goes and comes at once with another file',
    act: ({ at, write }) => {
      rmSync(at('more'), { recursive: true });
      write('more/c.bowl', notesOf('nia', 2));
    },
    shows: { otto: undefined, nia: 2 },
  },
  {
    name: 'a folder renamed away and back, then edited',
    act: async ({ at }) => {
      for (let times = 0; times < 3; times++) {
        renameSync(at('more'), at('less'));
        renameSync(at('less'), at('more'));
      }
      await sleep(SHORT);
      writeFileSync(at('more/b.bowl'), notesOf('otto', 2));
    },
    shows: { otto: 2 },
  },
  {
    name: 'a folder moved, then a new file in it',
    act: async ({ at, write }) => {
      renameSync(at('more'), at('moved'));
      await sleep(SHORT);
      write('moved/c.bowl', notesOf('nia', 2));
    },
    shows: { otto: 1, nia: 2 },
  },
  {
    name: 'a folder that is closed, and opened after an edit',
    act: async ({ at }) => {
      writeFileSync(at('more/b.bowl'), notesOf('otto', 2));
      chmodSync(at('more'), 0);
      await sleep(LONG);
      chmodSync(at('more'), 0o755);
    },
    shows: { otto: 2 },
  },
  {
    name: 'the folder of the notes moved away and back, edited meanwhile',
    act: async ({ root }) => {
      renameSync(root, `${root}-away`);
      writeFileSync(`${root}-away/a.bowl`, notesOf('wren', 2));
      await sleep(LONG);
      renameSync(`${root}-away`, root);
    },
    shows: { wren: 2, otto: 1 },
  },
];

/** Links, and what is no plain file. */
const LINKED: readonly State[] = [
  {
    name: 'a link whose target is written over',
    act: async ({ at, aside, shows }) => {
      writeFileSync(aside('one.txt'), notesOf('nia'));
      symlinkSync(aside('one.txt'), at('c.bowl'));
      await shows('nia', 1);
      writeFileSync(aside('one.txt'), notesOf('nia', 2));
    },
    shows: { nia: 2 },
  },
  {
    name: 'a link whose target is replaced',
    act: async ({ at, aside, shows }) => {
      writeFileSync(aside('one.txt'), notesOf('nia'));
      symlinkSync(aside('one.txt'), at('c.bowl'));
      await shows('nia', 1);
      writeFileSync(aside('two.txt'), notesOf('nia', 2));
      renameSync(aside('two.txt'), aside('one.txt'));
    },
    shows: { nia: 2 },
  },
  {
    name: 'a link turned elsewhere',
    act: async ({ at, aside, shows }) => {
      writeFileSync(aside('one.txt'), notesOf('nia'));
      writeFileSync(aside('two.txt'), notesOf('nia', 2));
      symlinkSync(aside('one.txt'), at('c.bowl'));
      await shows('nia', 1);
      symlinkSync(aside('two.txt'), at('c.tmp'));
      renameSync(at('c.tmp'), at('c.bowl'));
    },
    shows: { nia: 2 },
  },
  {
    name: 'a broken link whose target comes',
    act: async ({ at, aside }) => {
      symlinkSync(aside('late.txt'), at('c.bowl'));
      await sleep(LONG);
      writeFileSync(aside('late.txt'), notesOf('nia', 2));
    },
    shows: { nia: 2 },
  },
  {
    name: 'links in circles, up and to themselves',
    act: ({ at, write }) => {
      symlinkSync('self.bowl', at('self.bowl'));
      symlinkSync('two.bowl', at('one.bowl'));
      symlinkSync('one.bowl', at('two.bowl'));
      symlinkSync('..', at('more/up'));
      write('a.bowl', notesOf('wren', 2));
    },
    shows: { wren: 2, otto: 1 },
  },
  {
    name: 'a link to a folder, whose file is edited',
    act: async ({ at, aside, shows }) => {
      mkdirSync(aside('others'));
      writeFileSync(aside('others/c.bowl'), notesOf('nia'));
      symlinkSync(aside('others'), at('others'));
      await shows('nia', 1);
      writeFileSync(aside('others/c.bowl'), notesOf('nia', 2));
    },
    shows: { nia: 2 },
  },
  {
    name: 'a file with two names, written by the other',
    act: async ({ at, aside }) => {
      linkSync(at('a.bowl'), aside('a.txt'));
      await sleep(SHORT);
      writeFileSync(aside('a.txt'), notesOf('wren', 2));
    },
    shows: { wren: 2 },
  },
  {
    name: 'a pipe that is named like notes',
    act: ({ at, write }) => {
      spawnSync('mkfifo', [at('pipe.bowl')]);
      write('a.bowl', notesOf('wren', 2));
    },
    shows: { wren: 2 },
  },
  {
    name: 'a file that cannot be read, then can',
    act: async ({ at }) => {
      symlinkSync('/proc/self/mem', at('a.tmp'));
      renameSync(at('a.tmp'), at('a.bowl'));
      await sleep(LONG);
      unlinkSync(at('a.bowl'));
      writeFileSync(at('a.bowl'), notesOf('wren', 2));
    },
    shows: { wren: 2 },
  },
];

/** What all share, and the day. */
const SHARED: readonly State[] = [
  {
    name: 'a shelf that changes',
    act: ({ write }) => write('shelf.bowl', SHELF.replace('mix 1:2', 'mix 1:3')),
    shows: { wren: 1 },
  },
  { name: 'a shelf that goes', act: ({ at }) => unlinkSync(at('shelf.bowl')), shows: { wren: 1 } },
  {
    name: 'a salon that comes',
    act: ({ write }) => write('salon.bowl', 'salon quay "Quay"\n  money GBP\n'),
    shows: { wren: 1 },
  },
  {
    name: 'a client described in two files',
    act: ({ write }) => write('more/b.bowl', `${notesOf('otto', 2)}client wren "Another"\n`),
    shows: { otto: 2 },
  },
  { name: 'the day turns', act: ({ turnDay }) => turnDay('2026-11-26'), shows: { wren: 1 } },
  {
    name: 'the day turns while a file is saved',
    act: ({ turnDay, write }) => {
      turnDay('2026-11-26');
      write('a.bowl', notesOf('wren', 2));
    },
    shows: { wren: 2 },
  },
];

const PAGE = 'clients/wren.html';

/** Pages that something else changes. */
const PAGES: readonly State[] = [
  { name: 'a page written over', act: ({ page }) => writeFileSync(page(PAGE), '<p>theirs</p>'), shows: { wren: 1 } },
  {
    name: 'a page with one figure changed',
    act: ({ page }) => writeFileSync(page(PAGE), readFileSync(page(PAGE), 'utf8').replace('40', '90')),
    shows: { wren: 1 },
  },
  { name: 'a page cut short', act: ({ page }) => truncateSync(page('index.html'), 100), shows: { wren: 1 } },
  { name: 'a page taken away', act: ({ page }) => unlinkSync(page(PAGE)), shows: { wren: 1 } },
  {
    name: 'two pages that change places',
    act: ({ page }) => renameSync(page(PAGE), page('clients/otto.html')),
    shows: { wren: 1, otto: 1 },
  },
  {
    name: 'a card of nobody that comes',
    act: ({ page }) => writeFileSync(page('clients/nobody.html'), 'x'),
    shows: { wren: 1 },
  },
  { name: 'a page open to be written by all', act: ({ page }) => chmodSync(page(PAGE), 0o666), shows: { wren: 1 } },
  {
    name: 'a link in the place of a page',
    act: ({ page, aside }) => {
      writeFileSync(aside('theirs.html'), 'theirs');
      unlinkSync(page('index.html'));
      symlinkSync(aside('theirs.html'), page('index.html'));
    },
    shows: { wren: 1 },
  },
  {
    name: 'a link in the place of the folder of cards',
    act: ({ page, aside }) => {
      mkdirSync(aside('cards'));
      renameSync(page('clients'), aside('clients'));
      symlinkSync(aside('cards'), page('clients'));
    },
    shows: { wren: 1 },
  },
  {
    name: 'the folder of pages taken away',
    act: ({ page }) => rmSync(page(''), { recursive: true }),
    shows: { wren: 1 },
  },
  {
    name: 'the folder of cards taken away while a file is saved',
    act: ({ page, write }) => {
      write('a.bowl', notesOf('wren', 2));
      rmSync(page('clients'), { recursive: true });
    },
    shows: { wren: 2, otto: 1 },
  },
  {
    name: 'the own files of the folder of pages written over',
    act: ({ page }) => {
      for (const name of ['about-these-pages.txt', '.gitignore']) writeFileSync(page(name), 'theirs');
    },
    shows: { wren: 1 },
  },
  {
    name: 'notes put among the pages',
    act: ({ page }) => writeFileSync(page('clients/c.html'), notesOf('nia')),
    shows: { wren: 1, nia: undefined },
  },
];

/** Every state in which a watcher has to end where a cold build does. */
export const STATES: readonly State[] = [...SAVES, ...SYNCED, ...MOVED, ...LINKED, ...SHARED, ...PAGES];
