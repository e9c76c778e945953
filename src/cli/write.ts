import {
  closeSync,
  existsSync,
  fchmodSync,
  fchownSync,
  fsyncSync,
  openSync,
  readFileSync,
  realpathSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { reasonOf } from './open-journal.ts';
import { refusal } from './refusal.ts';

let held = false;

/** From the first write on an interrupt waits for the write under way, so that no half-made file stays behind. */
const holdInterrupts = (): void => {
  if (held) return;
  held = true;
  process.on('SIGINT', () => process.exit(130));
  process.on('SIGTERM', () => process.exit(143));
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

const writeBeside = (temporary: string, target: string, bytes: Uint8Array): void => {
  const old = statSync(target, { throwIfNoEntry: false });
  const handle = openSync(temporary, 'wx', 0o666);
  try {
    writeFileSync(handle, bytes);
    if (old !== undefined) {
      fchmodSync(handle, old.mode & 0o7777);
      try {
        fchownSync(handle, old.uid, old.gid);
      } catch {
        // Only the system's owner may give a file away; whoever writes then owns it.
      }
    }
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
};

/**
 * Puts `bytes` in the place of a file at once: a reader finds the old file or the new one, never half of either. Keeps
 * the file's mode and follows a link to it. With `was`, the bytes as they were read (none: no file yet), it refuses when
 * the file has changed since.
 * Throws a refusal when the file cannot be written or has changed; the file then stands as it was.
 */
export const writeWhole = (path: string, bytes: Uint8Array, was?: Uint8Array): void => {
  holdInterrupts();
  const target = targetOf(path);
  const temporary = join(dirname(target), `.${basename(target)}.${process.pid}.new`);
  try {
    writeBeside(temporary, target, bytes);
    if (was !== undefined && !bytesAt(target).equals(was))
      throw refusal(`\`${path}\` has changed since it was read, so it is not written.`, 'Run the command again.');
    renameSync(temporary, target);
  } catch (error) {
    rmSync(temporary, { force: true });
    if (error instanceof Error && error.name === 'Refusal') throw error;
    const folder = dirname(target);
    if (!existsSync(folder))
      throw refusal(`\`${path}\` cannot be written: the folder \`${folder}\` is not there.`, 'Make the folder first.');
    throw refusal(`\`${path}\` cannot be written: ${reasonOf(error)}.`);
  }
  syncFolder(dirname(target));
};
