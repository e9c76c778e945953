import { readdirSync, readFileSync, realpathSync, type Stats, statSync } from 'node:fs';
import { homedir } from 'node:os';
import { dirname, isAbsolute, join, relative, resolve } from 'node:path';
import { ENDING } from '../journal/find.ts';
import { readSource } from '../journal/source.ts';

/**
 * Where the journal is that a path belongs to: the nearest folder, from the path on up, with a file of notes directly in
 * it that opens a salon. Looked for no further up than a folder with `.git`, the home folder and the disk's own border,
 * and never in a folder that somebody else owns or that everyone may write to: notes found there would be another's.
 */

const statOf = (path: string): Stats | undefined => {
  try {
    return statSync(path);
  } catch {
    return undefined;
  }
};

/** Files of notes directly in a folder; those named for a salon first, since one of them is likely to open it. */
const notesIn = (folder: string): string[] => {
  let names: string[];
  try {
    names = readdirSync(folder);
  } catch {
    return [];
  }
  const rank = (name: string): number => (/sal[oó]n|shop|studio/i.test(name) ? 0 : 1);
  return names
    .filter((name) => name.endsWith(ENDING) && !name.startsWith('.'))
    .sort((a, b) => rank(a) - rank(b) || (a < b ? -1 : 1));
};

const SALON = Buffer.from('salon');
const CAPITAL = Buffer.from('SALON');
const TITLE = Buffer.from('Salon');

const opensSalon = (path: string, owner: number): boolean => {
  const stat = statOf(path);
  if (stat?.isFile() !== true || stat.uid !== owner) return false;
  let bytes: Buffer;
  try {
    bytes = readFileSync(path);
  } catch {
    return false;
  }
  // Most files hold clients, and are not read for it.
  if (![SALON, TITLE, CAPITAL].some((word) => bytes.includes(word))) return false;
  return readSource(path, bytes).entries.some(({ entry }) => entry.kind === 'salon');
};

const WRITABLE_BY_ALL = 0o002;

const homeOf = (): string | undefined => {
  try {
    return realpathSync(homedir());
  } catch {
    return undefined;
  }
};

/** The real path of the folder whose notes a path is judged with; undefined where no salon is found. */
const journalAbove = (path: string): string | undefined => {
  let folder: string;
  let stat: Stats;
  try {
    const real = realpathSync(path);
    folder = statSync(real).isDirectory() ? real : dirname(real);
    stat = statSync(folder);
  } catch {
    return undefined;
  }
  const { dev, uid } = stat;
  const home = homeOf();
  for (let at = folder; ; ) {
    if (notesIn(at).some((name) => opensSalon(join(at, name), uid))) return at;
    const above = dirname(at);
    if (above === at || at === home || statOf(join(at, '.git')) !== undefined) return undefined;
    const next = statOf(above);
    if (next === undefined || next.dev !== dev || next.uid !== uid || (next.mode & WRITABLE_BY_ALL) !== 0)
      return undefined;
    at = above;
  }
};

/** A folder as it is reached from here: as typed where it was typed whole, else from the current folder. */
const asReached = (real: string, typed: string): string =>
  isAbsolute(typed) ? real : relative(realpathSync('.'), real) || '.';

/** The folder of notes that a path belongs to, and whether it is another than the path itself. */
export type JournalFolder = { readonly folder: string; readonly isOther: boolean };

/** The journal that a path belongs to; undefined where none is found, and the path stands for itself. */
export const journalOf = (path: string): JournalFolder | undefined => {
  const real = journalAbove(path);
  if (real === undefined) return undefined;
  const isOther = realpathSync(resolve(path)) !== real;
  return { folder: isOther ? asReached(real, path) : path, isOther };
};
