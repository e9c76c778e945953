import { readdirSync, readFileSync, realpathSync, statSync } from 'node:fs';
import { basename, dirname, normalize } from 'node:path';
import { ENDING, findFiles } from '../journal/find.ts';
import { type Journal, joinSources } from '../journal/journal.ts';
import type { Unreadable } from '../journal/read.ts';
import { readSource, type Source } from '../journal/source.ts';
import { nearNames } from '../text/near.ts';
import { remark } from './print.ts';
import { startProgress } from './progress.ts';
import { offered, refusal } from './refusal.ts';

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

/** A journal as read, and the files that could not be read; those are named on standard error already. */
export type Opened = { readonly journal: Journal; readonly unreadable: readonly Unreadable[] };

/** Reads the notes at the paths, the current folder when none is given. Throws a refusal as `notesAt` does. */
export const openJournal = (paths: readonly string[]): Opened => {
  const files = notesAt(paths);
  const progress = startProgress();
  const sources: Source[] = [];
  const unreadable: Unreadable[] = [];
  for (const [index, path] of files.entries()) {
    progress.say(`reading file ${index + 1} of ${files.length}`);
    let bytes: Buffer;
    try {
      bytes = readFileSync(path);
    } catch (error) {
      unreadable.push({ path, reason: reasonOf(error) });
      continue;
    }
    sources.push(readSource(path, bytes));
  }
  progress.done();
  for (const { path, reason } of unreadable) remark(`\`${path}\` cannot be read: ${reason}. It is left out.`);
  return { journal: joinSources(sources), unreadable };
};
