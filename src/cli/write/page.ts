import { statSync } from 'node:fs';
import { dirname, isAbsolute, resolve } from 'node:path';
import { forTerminal } from '../print.ts';
import { refusal } from '../refusal.ts';
import { pourInto, replaceFile, standsAt, sweepUnfinished } from './door.ts';
import { sayLost } from './lost.ts';
import { isBelow, placeFor } from './place.ts';
import { fileMode, type Privacy } from './privacy.ts';
import { holdInterrupts, orRefuse, refuseKept } from './refused.ts';

/** Where the system keeps terminals, pipes of the shell and the like, which are named as what they are. */
const DEVICES = '/dev';

/** What a path is named as, of the system's own terminals and pipes. Throws a refusal for a disk. */
const deviceAt = (path: string): 'terminal' | 'pipe' | undefined => {
  if (!isAbsolute(path) || !isBelow(resolve(path), DEVICES)) return undefined;
  const stat = statSync(path, { throwIfNoEntry: false });
  return stat?.isCharacterDevice() ? 'terminal' : stat?.isFIFO() ? 'pipe' : undefined;
};

/**
 * Puts a page into the file that was named for it. It is replaced at once, a link is not followed, and it can be read by
 * nobody who cannot read the notes. A pipe or terminal that is named as itself is written to as it stands.
 * Throws a refusal when it cannot be written, and what stood there stands.
 */
export const writePage = (path: string, bytes: Uint8Array, grounds: readonly string[], readers: Privacy): void => {
  holdInterrupts();
  orRefuse(path, () => {
    const device = deviceAt(path);
    if (device !== undefined) return pourInto(path, device === 'terminal' ? forTerminal(bytes) : bytes);
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
    if (old !== undefined) sayLost(path, target, old);
  });
};
