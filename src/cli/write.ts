import {
  accessSync,
  closeSync,
  constants,
  existsSync,
  fchmodSync,
  fchownSync,
  fsyncSync,
  openSync,
  readFileSync,
  realpathSync,
  renameSync,
  rmSync,
  type Stats,
  statSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import { reasonOf } from './open-journal.ts';
import { isRefusal, type Refusal, refusal } from './refusal.ts';
import { sweepUnfinished, unfinishedName } from './unfinished.ts';

let held = false;

/**
 * From the first write on an interrupt waits for the write under way, so that no half-made file stays behind. A command
 * that takes interrupts itself, as watching does, ends in its own way.
 */
const holdInterrupts = (): void => {
  if (held || process.listenerCount('SIGINT') > 0) return;
  held = true;
  process.on('SIGINT', () => process.exit(130));
  process.on('SIGTERM', () => process.exit(143));
  process.on('SIGHUP', () => process.exit(129));
};

/** The file that a path leads to through its links; the path itself while there is none. */
const targetOf = (path: string): string => {
  try {
    return realpathSync(path);
  } catch {
    return path;
  }
};

/** The bytes of a file as they are now; none while there is no file. */
const bytesAt = (target: string): Buffer => {
  try {
    return readFileSync(target);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return Buffer.alloc(0);
    throw error;
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

/** What to do about the system's commonest reasons not to write. */
const REMEDIES: Readonly<Record<string, string>> = {
  ENOSPC: 'Make room on the disk',
  EDQUOT: 'Make room on the disk',
  EACCES: 'See that you may write the file and its folder',
  EPERM: 'See that you may write the file and its folder',
  EROFS: 'Copy the notes to a disk that can be written',
  EIO: 'Copy the notes to another disk first, since this one has a fault',
  EBUSY: 'Close the other program',
};

/** Why a file is not written, and what to do; whatever stood there stands. */
const notWritten = (path: string, target: string, error: unknown): Refusal => {
  const folder = dirname(target);
  if (!existsSync(folder))
    return refusal(`\`${path}\` cannot be written: the folder \`${folder}\` is not there.`, 'Make the folder first.');
  const remedy = REMEDIES[(error as NodeJS.ErrnoException).code ?? ''] ?? 'See to that';
  const stands = existsSync(target) ? 'It stands as it was.' : 'Nothing is left of it.';
  return refusal(
    `\`${path}\` cannot be written: ${reasonOf(error)}.`,
    `${stands} ${remedy}, then run the command again.`,
  );
};

/** Writes the new content beside the file, with the file's own mode from the first byte on, and sees it to the disk. */
const writeBeside = (temporary: string, bytes: Uint8Array, old: Stats | undefined): void => {
  const handle = openSync(temporary, 'wx', old === undefined ? 0o666 : 0o600);
  try {
    if (old !== undefined) {
      try {
        fchownSync(handle, old.uid, old.gid);
      } catch {
        // Only the system's owner may give a file away; whoever writes then owns it.
      }
      fchmodSync(handle, old.mode & 0o7777);
    }
    writeFileSync(handle, bytes);
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
};

/** Takes the temporary file away where that can be done. */
const takeAway = (temporary: string): void => {
  try {
    rmSync(temporary, { force: true });
  } catch {
    // The error that led here is the one to tell; a later write takes the file away.
  }
};

/** The file as it is; undefined while there is none. Throws a refusal when it is a folder or is kept from writing. */
const standing = (path: string, target: string): Stats | undefined => {
  const old = statSync(target, { throwIfNoEntry: false });
  if (old?.isDirectory()) throw refusal(`\`${path}\` is a folder, and a file is to be written.`, 'Name a file in it.');
  // A rename would get round the mark.
  if (old?.isFile() && (old.mode & 0o222) === 0)
    throw refusal(`\`${path}\` is read-only, so it is not written.`, 'Make it writable first, if it is to change.');
  if (old !== undefined) accessSync(target, constants.W_OK);
  return old;
};

/**
 * Puts `bytes` in the place of a file at once: a reader finds the old file or the new one, never half of either. Keeps
 * the file's mode and follows a link to it. With `was`, the bytes as they were read (none: no file yet), it refuses when
 * the file has changed since. What is no file, as a pipe or a terminal, is written to as it stands.
 * Throws a refusal when the file cannot be written or has changed; the file then stands as it was.
 */
export const writeWhole = (path: string, bytes: Uint8Array, was?: Uint8Array): void => {
  holdInterrupts();
  const target = targetOf(path);
  const temporary = join(dirname(target), unfinishedName(target));
  let begun = false;
  try {
    const old = standing(path, target);
    if (old !== undefined && !old.isFile()) {
      writeFileSync(target, bytes);
      return;
    }
    sweepUnfinished(dirname(target), target);
    begun = true;
    writeBeside(temporary, bytes, old);
    if (was !== undefined && !bytesAt(target).equals(was))
      throw refusal(`\`${path}\` has changed since it was read, so it is not written.`, 'Run the command again.');
    renameSync(temporary, target);
  } catch (error) {
    if (begun) takeAway(temporary);
    throw isRefusal(error) ? error : notWritten(path, target, error);
  }
  syncFolder(dirname(target));
};
