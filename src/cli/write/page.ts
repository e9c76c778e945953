import { statSync } from 'node:fs';
import { dirname, isAbsolute, resolve } from 'node:path';
import { refusal } from '../refusal.ts';
import { pourInto, replaceFile, standsAt, sweepUnfinished } from './door.ts';
import { isBelow, placeFor } from './place.ts';
import { fileMode, type Privacy } from './privacy.ts';
import { holdInterrupts, orRefuse, refuseKept } from './refused.ts';

/** Where the system keeps terminals, pipes of the shell and the like, which are named as what they are. */
const DEVICES = '/dev';

/** Whether a path is named as one of the system's own terminals or pipes. Throws a refusal for a disk. */
const isDevice = (path: string): boolean => {
  if (!isAbsolute(path) || !isBelow(resolve(path), DEVICES)) return false;
  const stat = statSync(path, { throwIfNoEntry: false });
  return stat?.isCharacterDevice() === true || stat?.isFIFO() === true;
};

/**
 * Puts a page into the file that was named for it. It is replaced at once, a link is not followed, and it can be read by
 * nobody who cannot read the notes. A pipe or terminal that is named as itself is written to as it stands.
 * Throws a refusal when it cannot be written, and what stood there stands.
 */
export const writePage = (path: string, bytes: Uint8Array, grounds: readonly string[], readers: Privacy): void => {
  holdInterrupts();
  orRefuse(path, () => {
    if (isDevice(path)) return pourInto(path, bytes);
    const target = placeFor(path, grounds);
    const old = standsAt(target);
    if (old?.isSymbolicLink())
      throw refusal(`\`${path}\` is a link, and no page is put in its place.`, 'Name the file that is to be written.');
    if (old !== undefined) refuseKept(path, target, old);
    if (old?.isFIFO()) return pourInto(target, bytes);
    if (old !== undefined && !old.isFile())
      throw refusal(`\`${path}\` is no file, and no page is put in its place.`, 'Name a file.');
    sweepUnfinished(dirname(target), target);
    const mode = old === undefined ? fileMode(readers) : old.mode & (0o7700 | fileMode(readers));
    replaceFile(target, bytes, { mode, isExact: old !== undefined, old, sync: true });
  });
};
