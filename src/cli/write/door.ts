import {
  closeSync,
  constants,
  fchmodSync,
  fchownSync,
  fstatSync,
  fsyncSync,
  lstatSync,
  mkdirSync,
  openSync,
  readdirSync,
  realpathSync,
  renameSync,
  rmdirSync,
  rmSync,
  type Stats,
  writeFileSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import { isLeftBehind, unfinishedName } from './unfinished.ts';

/*
 * The one door: nothing else in the program makes, changes or deletes a file or a folder (a test walks the source).
 * Every function here takes a place whose folder is a real path, and works on the name itself, never on what a link of
 * that name leads to. What may be written at all is asked in place.ts, before.
 */

/** Flags that some systems lack are left out there. */
const { O_WRONLY, O_APPEND, O_CREAT, O_EXCL, O_NOFOLLOW = 0, O_NONBLOCK = 0 } = constants;

/** An error in the system's manner, for what the door itself refuses: ELINK where a link has come into a real path. */
const closed = (code: string, path: string): NodeJS.ErrnoException =>
  Object.assign(new Error(`${code}: ${path}`), { code, path });

/** What stands at a place, a link as itself; undefined while nothing does. Throws the system's error. */
export const standsAt = (path: string): Stats | undefined => lstatSync(path, { throwIfNoEntry: false });

/** What this run has written: files that stand whole, and places where something was begun that is not known to be whole. */
const whole = new Set<string>();
const begun = new Set<string>();

/** Files that are remembered as written, the last ones: a watch writes for days. */
const MOST_WHOLE = 100;

const isWhole = (path: string): void => {
  whole.delete(path);
  whole.add(path);
  const [oldest = ''] = whole;
  if (whole.size > MOST_WHOLE) whole.delete(oldest);
};

const isLeft = (path: string): boolean => {
  try {
    return standsAt(path) !== undefined;
  } catch {
    return true;
  }
};

/** What this run left on the disk up to now: files that stand whole, and places where something half written may stand. */
export type Left = { readonly whole: readonly string[]; readonly half: readonly string[] };

/** For whoever has to say after a fault what was written. Never throws. */
export const leftOnDisk = (): Left => ({ whole: [...whole], half: [...begun].filter(isLeft) });

/** The folder of a place is the folder that was asked about, and no link has come into its path since. */
const sameFolder = (path: string): void => {
  const folder = dirname(path);
  if (realpathSync(folder) !== folder) throw closed('ELINK', folder);
};

/** Makes a file that is not there yet, at once or not at all. Throws the system's error, EEXIST when something is there. */
export const makeFile = (path: string, text: string): void => {
  sameFolder(path);
  const handle = openSync(path, O_WRONLY | O_CREAT | O_EXCL | O_NOFOLLOW, 0o600);
  try {
    writeFileSync(handle, text);
  } finally {
    closeSync(handle);
  }
};

/** Opens the file beside, exclusively; a file or link in its place is one that a killed run of this number left. */
const openBeside = (temporary: string, mode: number): number => {
  const flags = O_WRONLY | O_CREAT | O_EXCL | O_NOFOLLOW;
  try {
    return openSync(temporary, flags, mode);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error;
    if (standsAt(temporary)?.isDirectory()) throw closed('EISDIR', temporary);
    rmSync(temporary, { force: true });
    return openSync(temporary, flags, mode);
  }
};

const syncFolder = (folder: string): void => {
  try {
    const handle = openSync(folder, 'r');
    try {
      fsyncSync(handle);
    } finally {
      closeSync(handle);
    }
  } catch {
    // Some systems do not let a folder be opened; the rename stands all the same.
  }
};

/**
 * Gives a file the owner and the group of the one in whose place it comes, or else the group alone: only the system's owner
 * may give a file away, and anybody may give it to a group of theirs. Tells whether the group is as it was.
 */
const keepOwner = (handle: number, { uid, gid }: Stats): boolean => {
  for (const owner of [uid, process.getuid?.()]) {
    try {
      if (owner !== undefined) fchownSync(handle, owner, gid);
      break;
    } catch {
      // Whoever writes then owns it, which is said to them.
    }
  }
  return fstatSync(handle).gid === gid;
};

/** How a file is put in the place of another. */
export type Replacing = {
  /** The mode of the file from its first byte on; the user's mask takes from it where `isExact` does not say otherwise. */
  readonly mode: number;
  readonly isExact?: boolean;
  /** The file in whose place it comes, whose owner it keeps. */
  readonly old?: Stats | undefined;
  /** Whether the disk is waited for. */
  readonly sync: boolean;
  /** Asked when all is written and only the rename is left; what it throws leaves everything as it stood. */
  readonly last?: () => void;
};

/**
 * Puts bytes in the place of a file at once: a reader finds the old file or the new one, never half of either. A link in
 * that place goes, and what it led to stands. Throws the system's error; whatever stood there then stands.
 */
export const replaceFile = (path: string, bytes: Uint8Array | string, how: Replacing): void => {
  const temporary = join(dirname(path), unfinishedName(path));
  sameFolder(path);
  const handle = openBeside(temporary, how.old === undefined ? how.mode : how.mode & 0o600);
  begun.add(temporary);
  try {
    try {
      // What one group was let do is not for another.
      const mode = how.old === undefined || keepOwner(handle, how.old) ? how.mode : how.mode & ~0o070;
      if (how.isExact) fchmodSync(handle, mode);
      writeFileSync(handle, bytes);
      if (how.sync) fsyncSync(handle);
    } finally {
      closeSync(handle);
    }
    how.last?.();
    sameFolder(path);
    renameSync(temporary, path);
    begun.delete(temporary);
    isWhole(path);
  } catch (error) {
    try {
      rmSync(temporary, { force: true });
      begun.delete(temporary);
    } catch {
      // The error that led here is the one to tell; a later write takes the file away.
    }
    throw error;
  }
  if (how.sync) syncFolder(dirname(path));
};

/** Milliseconds for which somebody who reads a pipe is waited for, and the time between two looks. */
const READER = 3_000;
const LOOK = 50;

/** Waits until somebody reads a pipe; without that, writing to it would wait for ever. Throws the system's error, ENXIO. */
const waitForReader = (path: string): void => {
  const end = Date.now() + READER;
  for (;;) {
    try {
      closeSync(openSync(path, O_WRONLY | O_NONBLOCK));
      return;
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== 'ENXIO' || Date.now() > end) throw error;
    }
    Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, LOOK);
  }
};

/** Writes to what is no file and was named as itself, such as a terminal or a pipe of the shell; never makes anything. */
export const pourInto = (path: string, bytes: Uint8Array): void => {
  waitForReader(path);
  const handle = openSync(path, O_WRONLY | O_APPEND);
  begun.add(path);
  try {
    writeFileSync(handle, bytes);
    begun.delete(path);
  } finally {
    closeSync(handle);
  }
};

/** Takes a file, or a link and not what it leads to, away; nothing there is no fault. Throws the system's error. */
export const takeFile = (path: string): void => {
  if (standsAt(path) === undefined) return;
  sameFolder(path);
  rmSync(path, { force: true });
};

/** Makes a folder and those above it, and gives the first that was not there. Throws the system's error. */
export const makeFolder = (path: string, mode = 0o777): string | undefined => {
  let above = path;
  while (standsAt(above) === undefined && dirname(above) !== above) above = dirname(above);
  if (realpathSync(above) !== above) throw closed('ELINK', above);
  return mkdirSync(path, { recursive: true, mode });
};

/** Takes an empty folder away. Throws the system's error. */
export const takeFolder = (path: string): void => rmdirSync(path);

/** Sets the mode of a folder that is one and no link; one of another owner keeps its own. Throws the system's error. */
export const setFolderMode = (path: string, mode: number): void => {
  const handle = openSync(path, constants.O_RDONLY | O_NOFOLLOW | O_NONBLOCK | (constants.O_DIRECTORY ?? 0));
  try {
    fchmodSync(handle, mode);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EPERM') throw error;
  } finally {
    closeSync(handle);
  }
};

/**
 * Takes away what a run that was killed left half written in a folder: of one file, or of all. What a running process
 * may still be writing stays. Never throws.
 */
export const sweepUnfinished = (folder: string, target?: string): void => {
  try {
    for (const name of readdirSync(folder)) if (isLeftBehind(name, target)) takeFile(join(folder, name));
  } catch {
    // What cannot be taken away now is no reason to stop; the write says what is wrong with the folder.
  }
};
