import { readFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { changedMeanwhile, isRefusal, type Refusal, refusal } from '../refusal.ts';
import { replaceFile, standsAt, sweepUnfinished } from './door.ts';
import { sayLost } from './lost.ts';
import { notesPlace, refuseNoFile } from './place.ts';
import { inTurn, sweepTurns, type Turn } from './queue.ts';
import { holdInterrupts, orRefuse, refuseKept } from './refused.ts';

/** A file of notes while no other run of the program changes it. */
export type Held = {
  /** Whether it still has the bytes that were read; none for a file that is not there. */
  readonly isAs: (was: Uint8Array) => boolean;
  /**
   * Puts bytes in its place, where it still has those that were read. Keeps its mode, and its owner where the system lets
   * it; what is lost is said. Throws a refusal when it has changed or cannot be written, and it then stands as it was.
   */
  readonly write: (bytes: Uint8Array, was: Uint8Array) => void;
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

const replace = (
  path: string,
  target: string,
  { bytes, was, turn }: { readonly bytes: Uint8Array; readonly was: Uint8Array; readonly turn: Turn },
): void => {
  const old = standsAt(target);
  if (old !== undefined) refuseKept(path, target, old);
  if (old !== undefined && !old.isFile())
    throw refusal(`\`${path}\` is no file, so no notes are put in its place.`, 'Name a file.');
  sweepUnfinished(dirname(target), target);
  replaceFile(target, bytes, {
    mode: old === undefined ? 0o666 : old.mode & 0o7777,
    isExact: old !== undefined,
    old,
    sync: true,
    last: () => {
      if (!bytesAt(target).equals(was) || !turn.isHeld()) throw changedMeanwhile(path, 'it is not written');
    },
  });
  // An editor that saved in the very moment may have put its own version over this one.
  if (!bytesAt(target).equals(bytes))
    throw refusal(
      `\`${path}\` was saved by another program in the moment it was written, and what was to be written is not in it as it should be.`,
      'Look at the file, then run the command again.',
    );
  if (old !== undefined) sayLost(path, target, old);
};

/**
 * Holds a file of notes against other runs of the program while `work` looks at it and writes it. `grounds`: the folders
 * of the notes; a link in them is followed only within them. Throws a refusal when the file is not to be written.
 */
export const holdNotes = <T>(path: string, grounds: readonly string[], work: (held: Held) => T): T => {
  holdInterrupts();
  const target = orRefuse(path, () => notesPlace(path, grounds));
  const old = orRefuse(path, () => standsAt(target));
  if (old !== undefined) orRefuse(path, () => refuseKept(path, target, old));
  // What `work` itself throws is its own, and no trouble of the disk's.
  let thrown: { readonly error: unknown } | undefined;
  const done = orRefuse(path, () =>
    inTurn(target, path, (turn) => {
      try {
        return {
          value: work({
            isAs: (was) => orRefuse(path, () => bytesAt(target).equals(was)),
            write: (bytes, was) => orRefuse(path, () => replace(path, target, { bytes, was, turn })),
          }),
        };
      } catch (error) {
        thrown = { error };
        return undefined;
      }
    }),
  );
  if (done === undefined) throw thrown?.error;
  return done.value;
};

/**
 * Why a file of notes will not be written, as far as that is known without trying: no file, read-only, or a link that
 * leads elsewhere. `grounds` as for `holdNotes`.
 */
export const whyKept = (path: string, grounds: readonly string[]): Refusal | undefined => {
  try {
    refuseNoFile(path);
    const target = notesPlace(path, grounds);
    const old = standsAt(target);
    if (old !== undefined) orRefuse(path, () => refuseKept(path, target, old));
    return undefined;
  } catch (error) {
    // What the system says will be told by whoever reads or writes there.
    return isRefusal(error) ? error : undefined;
  }
};

/** Takes away what killed runs left beside files of notes. Never throws: a write says what is wrong with a folder. */
export const sweepBeside = (paths: readonly string[], grounds: readonly string[]): void => {
  const folders = new Set<string>();
  for (const path of paths) {
    try {
      folders.add(dirname(notesPlace(path, grounds)));
    } catch {
      // A file that is not to be written has nothing of ours beside it.
    }
  }
  for (const folder of folders) {
    try {
      sweepTurns(folder);
    } catch {
      // A folder that cannot be looked into is told of by whoever writes there.
    }
  }
};

/** Puts bytes in the place of a file of notes that was read as `was`. Throws as `holdNotes`. */
export const writeNotes = (path: string, bytes: Uint8Array, was: Uint8Array, grounds: readonly string[]): void =>
  holdNotes(path, grounds, ({ write }) => write(bytes, was));
