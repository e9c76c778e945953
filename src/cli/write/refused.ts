import { accessSync, constants, existsSync, type Stats } from 'node:fs';
import { dirname } from 'node:path';
import { reasonOf } from '../open-journal.ts';
import { isRefusal, type Refusal, refusal } from '../refusal.ts';

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
const notWritten = (path: string, error: unknown): Refusal => {
  const folder = dirname(path);
  if (!existsSync(folder))
    return refusal(`\`${path}\` cannot be written: the folder \`${folder}\` is not there.`, 'Make the folder first.');
  const remedy = REMEDIES[(error as NodeJS.ErrnoException).code ?? ''] ?? 'See to that';
  const stands = existsSync(path) ? 'It stands as it was.' : 'Nothing is left of it.';
  return refusal(
    `\`${path}\` cannot be written: ${reasonOf(error)}.`,
    `${stands} ${remedy}, then run the command again.`,
  );
};

/** Does a step of writing; what the system throws is thrown on as a refusal that names the file as people know it. */
export const orRefuse = <T>(path: string, step: () => T): T => {
  try {
    return step();
  } catch (error) {
    throw isRefusal(error) ? error : notWritten(path, error);
  }
};

/** Throws a refusal when what stands at a place is a folder, or is kept from writing. */
export const refuseKept = (path: string, target: string, old: Stats): void => {
  if (old.isDirectory()) throw refusal(`\`${path}\` is a folder, and a file is to be written.`, 'Name a file in it.');
  // A rename would get round the mark.
  if (old.isFile() && (old.mode & 0o222) === 0)
    throw refusal(`\`${path}\` is read-only, so it is not written.`, 'Make it writable first, if it is to change.');
  if (!old.isSymbolicLink()) accessSync(target, constants.W_OK);
};

let held = false;

/**
 * From the first write on an interrupt waits for the write under way, so that no half-made file stays behind. A command
 * that takes interrupts itself, as watching does, ends in its own way.
 */
export const holdInterrupts = (): void => {
  if (held || process.listenerCount('SIGINT') > 0) return;
  held = true;
  process.on('SIGINT', () => process.exit(130));
  process.on('SIGTERM', () => process.exit(143));
  process.on('SIGHUP', () => process.exit(129));
};
