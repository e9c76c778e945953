import { createHash } from 'node:crypto';
import {
  mkdirSync,
  readdirSync,
  readFileSync,
  realpathSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join, relative, resolve, sep } from 'node:path';
import { findFiles } from '../../journal/find.ts';
import { reasonOf } from '../open-journal.ts';
import { refusal } from '../refusal.ts';
import { sweepUnfinished, unfinishedName } from '../unfinished.ts';

/** The folder that pages are put into. A page is replaced at once, so a reader finds the old one or the new, whole. */
export type PageFolder = {
  /** Its real path. */
  readonly path: string;
  /** Writes a page where its content is new; gives whether it was. Throws the system's error; the old page then stands. */
  readonly put: (name: string, html: string) => boolean;
  /** Takes a page away. */
  readonly take: (name: string) => void;
  /** Pages that were put and are no longer there. */
  readonly lost: () => readonly string[];
  /** Takes away pages of earlier runs that are none of these. */
  readonly keepOnly: (names: ReadonlySet<string>) => void;
};

/** Where the clients' cards stand in it. */
export const CARDS = 'clients';

const MARK = 'about-these-pages.txt';
const MARK_TEXT =
  'These pages are made from notes by `bowlbook watch`. Whatever is in this folder may be written over or taken away.\n';

/** Pages are made anew from the notes, so version control leaves them out. */
const IGNORE = '.gitignore';

const mark = (folder: string): void => {
  writeFileSync(join(folder, MARK), MARK_TEXT);
  writeFileSync(join(folder, IGNORE), '*\n');
};

const hashOf = (text: string | Uint8Array): string => createHash('sha1').update(text).digest('base64');

const namesIn = (folder: string): string[] => {
  try {
    return readdirSync(folder);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return [];
    throw error;
  }
};

const isWithin = (inner: string, outer: string): boolean => !relative(outer, inner).split(sep).includes('..');

const refuseUnfit = (out: string, real: string, root: string): void => {
  const other = 'Name an empty folder, or one that is not there yet, with `--out`.';
  if (isWithin(realpathSync(root), real))
    throw refusal(`\`${out}\` holds the notes themselves, so no pages are put there.`, other);
  const [note] = findFiles(real);
  if (note !== undefined)
    throw refusal(`\`${out}\` holds notes (\`${relative(real, note)}\`), so no pages are put there.`, other);
  const names = namesIn(real);
  if (names.length > 0 && !names.includes(MARK))
    throw refusal(`\`${out}\` holds other files (\`${names[0]}\`), so no pages are put there.`, other);
};

/**
 * Opens or makes the folder for pages of the notes at `root`. Throws a refusal when it cannot be made, when it holds
 * notes, and when it holds files that are no pages of ours.
 */
export const openPageFolder = (out: string, root: string): PageFolder => {
  let path: string;
  try {
    mkdirSync(out, { recursive: true });
    path = realpathSync(resolve(out));
    refuseUnfit(out, path, root);
    mkdirSync(join(path, CARDS), { recursive: true });
    mark(path);
    for (const folder of [path, join(path, CARDS)]) sweepUnfinished(folder);
  } catch (error) {
    if (error instanceof Error && error.name === 'Refusal') throw error;
    throw refusal(`\`${out}\` cannot be used for pages: ${reasonOf(error)}.`, 'Name another folder with `--out`.');
  }
  const known = new Map<string, string>();

  const hashOnDisk = (name: string): string | undefined => {
    try {
      return hashOf(readFileSync(join(path, name)));
    } catch {
      return undefined;
    }
  };

  const put = (name: string, html: string): boolean => {
    const hash = hashOf(html);
    if ((known.get(name) ?? hashOnDisk(name)) === hash) {
      known.set(name, hash);
      return false;
    }
    known.delete(name);
    const target = join(path, name);
    const temporary = join(dirname(target), unfinishedName(target));
    try {
      mkdirSync(dirname(target), { recursive: true });
      writeFileSync(temporary, html);
      renameSync(temporary, target);
    } catch (error) {
      try {
        rmSync(temporary, { force: true });
      } catch {
        // A folder that takes no page away either is told of by the error above.
      }
      throw error;
    }
    known.set(name, hash);
    return true;
  };

  const take = (name: string): void => {
    known.delete(name);
    rmSync(join(path, name), { force: true });
  };

  const lost = (): string[] => {
    const there = new Set([...namesIn(path), ...namesIn(join(path, CARDS)).map((name) => `${CARDS}/${name}`)]);
    const gone = [...known.keys()].filter((name) => !there.has(name));
    for (const name of gone) known.delete(name);
    if (!there.has(MARK) && statSync(path, { throwIfNoEntry: false }) !== undefined) mark(path);
    return gone;
  };

  const keepOnly = (names: ReadonlySet<string>): void => {
    for (const name of namesIn(join(path, CARDS)).map((one) => `${CARDS}/${one}`))
      if (name.endsWith('.html') && !names.has(name)) take(name);
  };

  return { path, put, take, lost, keepOnly };
};
