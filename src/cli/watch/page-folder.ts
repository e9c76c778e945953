import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, realpathSync, type Stats } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { findFiles } from '../../journal/find.ts';
import { reasonOf } from '../open-journal.ts';
import { isRefusal, refusal } from '../refusal.ts';
import { makeFolder, replaceFile, setFolderMode, standsAt, sweepUnfinished, takeFile } from '../write/door.ts';
import { isBelow, placeFor } from '../write/place.ts';
import { fileMode, folderMode, type Privacy, readersOfAll } from '../write/privacy.ts';

/** The folder that pages are put into. A page is replaced at once, so a reader finds the old one or the new, whole. */
export type PageFolder = {
  /** Its real path. */
  readonly path: string;
  /** Writes a page where its content is new; gives whether it was. Throws the system's error; the old page then stands. */
  readonly put: (name: string, html: string) => boolean;
  /** Takes a page away. */
  readonly take: (name: string) => void;
  /**
   * Pages that were put and no longer stand as they were put: gone, changed by something else, or open to more people
   * than may read the notes. What is among the cards and none of these is taken away, and the folder's own files are
   * put right.
   */
  readonly lost: (cards: ReadonlySet<string>) => readonly string[];
  /** Lets nobody read the pages who may not read every one of these notes. */
  readonly asPrivateAs: (notes: Iterable<string>) => void;
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

/** The folder's own files and what they hold. */
const OWN: readonly (readonly [string, string])[] = [
  [MARK, MARK_TEXT],
  [IGNORE, '*\n'],
];

const hashOf = (text: string | Uint8Array): string => createHash('sha1').update(text).digest('base64');

const namesIn = (folder: string): string[] => {
  try {
    return readdirSync(folder);
  } catch (error) {
    if (['ENOENT', 'ENOTDIR'].includes((error as NodeJS.ErrnoException).code ?? '')) return [];
    throw error;
  }
};

/** The content of a file; undefined for what is none or cannot be read. A link is not followed, a pipe not waited for. */
const contentOf = (path: string): Buffer | undefined => {
  try {
    return standsAt(path)?.isFile() ? readFileSync(path) : undefined;
  } catch {
    return undefined;
  }
};

const isOwn = (folder: string, [name, text]: readonly [string, string]): boolean =>
  contentOf(join(folder, name))?.equals(Buffer.from(text)) === true;

const isFolder = (path: string): boolean => standsAt(path)?.isDirectory() === true;

/** What a page looked like when it was put: something else that writes it leaves another size, time or inode. */
const stampOf = ({ size, mtimeMs, ctimeMs, ino }: Stats): string => `${size} ${mtimeMs} ${ctimeMs} ${ino}`;

const refuseUnfit = (out: string, real: string, root: string): void => {
  const other = 'Name an empty folder, or one that is not there yet, with `--out`.';
  if (isBelow(realpathSync(root), real))
    throw refusal(`\`${out}\` holds the notes themselves, so no pages are put there.`, other);
  const [note] = findFiles(real);
  if (note !== undefined)
    throw refusal(`\`${out}\` holds notes (\`${relative(real, note)}\`), so no pages are put there.`, other);
  const names = namesIn(real);
  if (names.length > 0 && !names.includes(MARK))
    throw refusal(`\`${out}\` holds other files (\`${names[0]}\`), so no pages are put there.`, other);
  if (names.length > 0 && !isOwn(real, [MARK, MARK_TEXT]))
    throw refusal(`\`${out}\` holds a \`${MARK}\` that is not of this program, so no pages are put there.`, other);
  const cards = join(real, CARDS);
  if (standsAt(cards) !== undefined && !isFolder(cards))
    throw refusal(`\`${join(out, CARDS)}\` is a link or a file, so no pages are put there.`, other);
};

/** Makes or finds the folder, and gives its real path. Throws a refusal when it is not fit. */
const openFolder = (out: string, root: string, readers: Privacy): string => {
  try {
    // A link in the notes' own folder leads nowhere else; one that was named with `--out` from outside is followed.
    const place = placeFor(join(out, MARK), [root]);
    makeFolder(dirname(place), folderMode(readers));
    const path = realpathSync(resolve(out));
    refuseUnfit(out, path, root);
    if (!isFolder(join(path, CARDS))) makeFolder(join(path, CARDS), folderMode(readers));
    return path;
  } catch (error) {
    if (isRefusal(error)) throw error;
    throw refusal(`\`${out}\` cannot be used for pages: ${reasonOf(error)}.`, 'Name another folder with `--out`.');
  }
};

/** Who may read all notes of a folder; nobody else where it cannot be looked through. */
const readersBelow = (root: string): Privacy => {
  try {
    return readersOfAll(findFiles(root));
  } catch {
    return { group: false, others: false };
  }
};

/**
 * Opens or makes the folder for pages of the notes at `root`. Throws a refusal when it cannot be made, when it holds
 * notes, when it holds files that are no pages of ours, and when a link in it leads elsewhere.
 */
export const openPageFolder = (out: string, root: string): PageFolder => {
  let readers = readersBelow(root);
  const path = openFolder(out, root, readers);
  const cards = join(path, CARDS);
  const known = new Map<string, { readonly hash: string; readonly stamp: string }>();

  const replace = (name: string, text: string): void =>
    replaceFile(join(path, name), text, { mode: fileMode(readers), sync: false });

  /** Puts the folder, its cards' folder and its own files right, but makes no folder that was taken away whole. */
  const putRight = (): void => {
    if (!isFolder(path)) return;
    for (const one of OWN) if (!isOwn(path, one)) replace(...one);
    if (standsAt(cards) !== undefined && !isFolder(cards)) takeFile(cards);
    for (const folder of [path, cards]) {
      const mode = standsAt(folder)?.mode;
      if (mode !== undefined && (mode & 0o777 & ~folderMode(readers)) !== 0)
        setFolderMode(folder, mode & (0o7000 | folderMode(readers)));
    }
  };

  try {
    putRight();
  } catch (error) {
    throw refusal(`\`${out}\` cannot be used for pages: ${reasonOf(error)}.`, 'Name another folder with `--out`.');
  }
  for (const folder of [path, cards]) sweepUnfinished(folder);

  /** Whether a page stands as it was put, or holds that content already; it is known from then on. */
  const stands = (name: string, hash: string): boolean => {
    const stat = standsAt(join(path, name));
    if (!stat?.isFile() || (stat.mode & 0o777 & ~fileMode(readers)) !== 0) return false;
    const stamp = stampOf(stat);
    const had = known.get(name);
    if (had?.stamp === stamp) return had.hash === hash;
    const content = contentOf(join(path, name));
    if (content === undefined || hashOf(content) !== hash) return false;
    known.set(name, { hash, stamp });
    return true;
  };

  const put = (name: string, html: string): boolean => {
    const hash = hashOf(html);
    if (stands(name, hash)) return false;
    known.delete(name);
    const target = join(path, name);
    if (name.startsWith(`${CARDS}/`) && standsAt(cards) !== undefined && !isFolder(cards)) takeFile(cards);
    makeFolder(dirname(target), folderMode(readers));
    replaceFile(target, html, { mode: fileMode(readers), sync: false });
    const stat = standsAt(target);
    if (stat !== undefined) known.set(name, { hash, stamp: stampOf(stat) });
    return true;
  };

  const take = (name: string): void => {
    known.delete(name);
    if (isFolder(dirname(join(path, name)))) takeFile(join(path, name));
  };

  /** Takes away the cards that are none of these; a folder that is named like a card is none. */
  const keepOnly = (names: ReadonlySet<string>): void => {
    if (!isFolder(cards)) return;
    for (const file of namesIn(cards)) {
      const name = `${CARDS}/${file}`;
      if (file.endsWith('.html') && !names.has(name) && !isFolder(join(path, name))) take(name);
    }
  };

  const lost = (those: ReadonlySet<string>): string[] => {
    putRight();
    const gone = [...known].flatMap(([name, { hash }]) => (stands(name, hash) ? [] : [name]));
    keepOnly(those);
    for (const name of gone) known.delete(name);
    return gone;
  };

  const asPrivateAs = (notes: Iterable<string>): void => {
    readers = readersOfAll(notes);
  };

  return { path, put, take, lost, asPrivateAs, keepOnly };
};
