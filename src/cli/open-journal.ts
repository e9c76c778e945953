import { readdirSync, readFileSync, realpathSync, statSync } from 'node:fs';
import { basename, dirname, normalize } from 'node:path';
import { ENDING, findFiles } from '../journal/find.ts';
import { type Journal, joinSources } from '../journal/journal.ts';
import { readSource, type Source } from '../journal/source.ts';
import { nearNames } from '../text/near.ts';
import { journalOf } from './find-journal.ts';
import { LARGE, optimiseSoon } from './optimise.ts';
import { remark } from './print.ts';
import { startProgress } from './progress.ts';
import { offered, refusal } from './refusal.ts';
import { groundsOf } from './write/place.ts';

/** What the system's commonest error codes mean, in words. */
const REASONS: Readonly<Record<string, string>> = {
  ENOENT: 'it is not there',
  EACCES: 'the system does not allow it',
  EPERM: 'the system does not allow it',
  EISDIR: 'it is a folder',
  ENOTDIR: 'a part of its path is a file',
  ELOOP: 'its link leads back to itself',
  ENOSPC: 'the disk is full',
  EROFS: 'the disk is read-only',
  EDQUOT: 'no more room on the disk is allowed',
  EIO: 'the disk reports a fault',
  EBUSY: 'another program holds it',
  EXDEV: 'it stands on a disk of its own',
  EMFILE: 'too many files are open',
  ENFILE: 'too many files are open',
  ENAMETOOLONG: 'its name is too long',
  ELINK: 'a link has come into its path',
  ENXIO: 'nobody reads from it',
  EEXIST: 'something else stands in its place',
};

/** Why the system refused, in words: from its error code, else its own message. */
export const reasonOf = (error: unknown): string => {
  const { code, message } = error as NodeJS.ErrnoException;
  return REASONS[code ?? ''] ?? message;
};

const nearPaths = (path: string): string[] => {
  try {
    return nearNames(basename(path), readdirSync(dirname(path)));
  } catch {
    return [];
  }
};

const filesAt = (path: string): string[] => {
  try {
    statSync(path);
  } catch (error) {
    const near = nearPaths(path);
    throw refusal(
      `\`${path}\` cannot be read: ${reasonOf(error)}.`,
      near.length > 0 ? `Near names in that folder: ${offered(near)}.` : undefined,
    );
  }
  try {
    return findFiles(normalize(path));
  } catch (error) {
    const { path: where } = error as NodeJS.ErrnoException;
    throw refusal(`\`${where ?? path}\` cannot be read: ${reasonOf(error)}.`);
  }
};

/** The files of notes that were found in this run, by the paths they were found at. */
const found = new Set<string>();

/** The folders that they were looked for in. */
const grounds = new Set<string>();

/** The notes of this run: their files, and the folders they were looked for in. */
export const notesRead = (): { readonly files: readonly string[]; readonly grounds: readonly string[] } => ({
  files: [...found],
  grounds: [...grounds],
});

const realOf = (path: string): string => {
  try {
    return realpathSync(path);
  } catch {
    return path;
  }
};

/** Whether a path leads to notes: by its ending, or because they were read from there. */
export const isNotes = (path: string): boolean => {
  const real = realOf(path);
  return path.endsWith(ENDING) || real.endsWith(ENDING) || [...found].some((one) => realOf(one) === real);
};

/** The files of notes at the paths, each once. Throws a refusal when a path cannot be read or holds no notes. */
export const notesAt = (paths: readonly string[]): string[] => {
  const roots = paths.length === 0 ? ['.'] : paths;
  const files = roots.flatMap(filesAt);
  for (const file of files) found.add(file);
  for (const ground of groundsOf(roots)) grounds.add(ground);
  if (files.length === 0) {
    throw refusal(
      `There are no notes (files ending in \`${ENDING}\`) in ${offered(roots)}.`,
      'Name the folder that holds them, or begin with `bowlbook new FOLDER`.',
    );
  }
  if (roots.length < 2) return files;
  const seen = new Set<string>();
  return files.filter((file) => seen.size < seen.add(realpathSync(file)).size);
};

/** Which of the files that were read the paths name: what is shown is of these, what is judged is judged with all. */
export type Shown = {
  /** No path was named, or the whole journal. */
  readonly isAll: boolean;
  readonly has: (file: string) => boolean;
};

/** The files of a journal, and those of them that are shown. */
export type JournalFiles = { readonly files: readonly string[]; readonly shown: Shown };

const ALL: Shown = { isAll: true, has: () => true };

const toldOf = (folders: readonly string[], shown: Shown): void => {
  const taken = offered(folders);
  remark(`Judged with the journal in ${taken}${shown.isAll ? '' : '; shown is what was named'}.`);
};

/**
 * The files of the journal that the paths belong to, the current folder when none is given: a file or a folder inside a
 * journal is judged with all of it. Says which was taken where it is not the folder asked for. Throws a refusal as
 * `notesAt` does.
 */
export const journalFiles = (paths: readonly string[]): JournalFiles => {
  const asked = paths.length === 0 ? ['.'] : paths;
  // What is named has to be there and hold notes; the current folder may stand anywhere in a journal.
  const named = paths.length === 0 ? [] : notesAt(paths);
  const folders = asked.map((path) => journalOf(path) ?? { folder: path, isOther: false });
  const others = [...new Set(folders.flatMap(({ folder, isOther }) => (isOther ? [folder] : [])))];
  if (others.length === 0) return { files: paths.length === 0 ? notesAt([]) : named, shown: ALL };
  const files = notesAt([...new Set(folders.map(({ folder }) => folder))]);
  const real = new Set(named.map(realOf));
  const held = new Set(files.filter((file) => real.has(realOf(file))));
  const shown: Shown =
    paths.length === 0 || held.size === files.length ? ALL : { isAll: false, has: (file) => held.has(file) };
  toldOf(others, shown);
  return { files, shown };
};

/** A file that could not be read, and what the system said. */
export type Unreadable = { readonly path: string; readonly reason: string };

/** A journal as read, and the files that could not be read; those are named on standard error already. */
export type Opened = { readonly journal: Journal; readonly unreadable: readonly Unreadable[]; readonly shown: Shown };

/** Reads the journal that the paths belong to, the current folder when none is given. Throws as `notesAt` does. */
export const openJournal = (paths: readonly string[]): Opened => {
  const { files, shown } = journalFiles(paths);
  const progress = startProgress();
  const sources: Source[] = [];
  const unreadable: Unreadable[] = [];
  let size = 0;
  for (const [index, path] of files.entries()) {
    progress.say(`reading file ${index + 1} of ${files.length}`);
    let bytes: Buffer;
    try {
      bytes = readFileSync(path);
    } catch (error) {
      unreadable.push({ path, reason: reasonOf(error) });
      continue;
    }
    if (size < LARGE && size + bytes.length >= LARGE) optimiseSoon();
    size += bytes.length;
    sources.push(readSource(path, bytes));
  }
  progress.done();
  for (const { path, reason } of unreadable) remark(`\`${path}\` cannot be read: ${reason}. It is left out.`);
  return { journal: joinSources(sources), unreadable, shown };
};
