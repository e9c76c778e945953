import { createHash } from 'node:crypto';
import { type BigIntStats, readFileSync, statSync } from 'node:fs';
import { sep } from 'node:path';
import { reasonOf } from '../open-journal.ts';
import { listNotes } from './list-notes.ts';

/** What changed since the last look. */
export type Look = {
  readonly isThere: boolean;
  /** Files with new content; `undefined` for one that is gone. */
  readonly put: ReadonlyMap<string, Uint8Array | undefined>;
  /** Files and folders that cannot be read at present, and why; what was read of them last stands. */
  readonly unreadable: ReadonlyMap<string, string>;
  /** Milliseconds after which to look again, since something is in doubt. */
  readonly again: number | undefined;
};

export type NotesOnDisk = {
  /** Looks at the files named, at all of the folder without. `now`: milliseconds of a clock that only goes forward. */
  readonly look: (now: number, files?: ReadonlySet<string>) => Look;
  readonly count: () => number;
};

type Known = {
  readonly stamp: string;
  readonly hash: string;
  readonly isEmpty: boolean;
  /** Whether it was read so soon after it was changed that a further change can have left the stamp as it is. */
  readonly isFresh: boolean;
};

/**
 * Milliseconds for which a file may be away, or empty, before it counts so: editors and sync clients take a file away and
 * put it back. Seen: 300 ms (unlink, then create).
 */
const GRACE = 700;

/** Milliseconds within which two changes can have one stamp: file systems count in steps of up to two seconds. */
const FRESH = 2_000;

/** How long a file that goes on changing is waited for, and the time between two looks at it. */
const LONGEST_WAIT = 1_000;
const SHORT = 40;

const hashOf = (bytes: Uint8Array): string => createHash('sha1').update(bytes).digest('base64');

// A file replaced by one of the same size and time is another inode, or has another time of status change.
const stampOf = ({ size, mtimeNs, ctimeNs, ino, dev }: BigIntStats): string =>
  `${size} ${mtimeNs} ${ctimeNs} ${ino} ${dev}`;

const isAway = (error: unknown): boolean =>
  ['ENOENT', 'ENOTDIR', 'EISDIR', 'ELOOP'].includes((error as NodeJS.ErrnoException).code ?? '');

/** A file that may not even be asked for stands in a closed folder, which the next look through all tells of. */
const isShutIn = (error: unknown): boolean => {
  const { code = '', syscall } = error as NodeJS.ErrnoException;
  return syscall === 'stat' && ['EACCES', 'EPERM'].includes(code);
};

/** The files of notes below a folder, read again where they changed. `leftOut` is a real path below which nothing counts. */
export const notesOnDisk = (root: string, leftOut: string): NotesOnDisk => {
  const known = new Map<string, Known>();
  const awaySince = new Map<string, number>();
  const busySince = new Map<string, number>();
  let unreadable = new Map<string, string>();

  const look = (now: number, only?: ReadonlySet<string>): Look => {
    const put = new Map<string, Uint8Array | undefined>();
    let again: number | undefined;
    const lookAgain = (after: number): void => {
      again = Math.min(again ?? after, after);
    };
    const listed = only === undefined ? listNotes(root, leftOut) : undefined;
    if (listed?.isThere === false) return { isThere: false, put, unreadable, again };
    if (listed !== undefined) {
      unreadable = new Map([...unreadable].filter(([path]) => listed.files.has(path)));
      for (const folder of listed.closed) unreadable.set(folder, 'the system does not allow it');
    }
    const isClosed = (path: string): boolean =>
      listed?.closed.some((folder) => path.startsWith(`${folder}${sep}`)) === true;

    /** Away, or empty where it was not: after the time of grace it is believed. */
    const isBelieved = (path: string): boolean => {
      const since = awaySince.get(path) ?? now;
      awaySince.set(path, since);
      if (now - since >= GRACE) return true;
      lookAgain(GRACE - (now - since));
      return false;
    };

    const goneAway = (path: string): void => {
      unreadable.delete(path);
      if (!known.has(path) || !isBelieved(path)) return;
      known.delete(path);
      awaySince.delete(path);
      put.set(path, undefined);
    };

    /** The content of a file that may have changed; undefined while it goes on changing. */
    const read = (path: string, stamp: string): Uint8Array | undefined => {
      const bytes = readFileSync(path);
      const since = busySince.get(path) ?? now;
      const isQuiet = stampOf(statSync(path, { bigint: true })) === stamp || now - since >= LONGEST_WAIT;
      if (isQuiet) busySince.delete(path);
      else {
        busySince.set(path, since);
        lookAgain(SHORT);
      }
      return isQuiet ? bytes : undefined;
    };

    const take = (path: string, stat: BigIntStats): void => {
      const before = known.get(path);
      const stamp = stampOf(stat);
      const isAsBefore = before?.stamp === stamp && !before.isFresh && only === undefined;
      const bytes = isAsBefore ? undefined : read(path, stamp);
      unreadable.delete(path);
      if (isAsBefore) awaySince.delete(path);
      if (bytes === undefined) return;
      const isEmpty = bytes.length === 0;
      if (isEmpty && before?.isEmpty === false && !isBelieved(path)) return;
      awaySince.delete(path);
      const hash = hashOf(bytes);
      known.set(path, { stamp, hash, isEmpty, isFresh: Math.abs(Date.now() - Number(stat.ctimeMs)) < FRESH });
      if (before?.hash !== hash) put.set(path, bytes);
    };

    const visit = (path: string): void => {
      try {
        const stat = statSync(path, { bigint: true });
        if (stat.isFile()) take(path, stat);
        else goneAway(path);
      } catch (error) {
        if (isAway(error)) goneAway(path);
        else {
          awaySince.delete(path);
          if (!isShutIn(error)) unreadable.set(path, reasonOf(error));
        }
      }
    };

    for (const path of only ?? new Set([...(listed?.files ?? []), ...known.keys()])) {
      if (listed === undefined || listed.files.has(path)) visit(path);
      else if (!isClosed(path)) goneAway(path);
    }
    // A file that turns up elsewhere with the same content was moved: it does not stand twice for the time of grace.
    const arrived = new Set([...put.keys()].flatMap((path) => known.get(path)?.hash ?? []));
    for (const path of awaySince.keys()) {
      const before = known.get(path);
      if (before === undefined || before.isEmpty || !arrived.has(before.hash)) continue;
      known.delete(path);
      awaySince.delete(path);
      put.set(path, undefined);
    }
    return { isThere: true, put, unreadable, again };
  };

  return { look, count: () => known.size };
};
