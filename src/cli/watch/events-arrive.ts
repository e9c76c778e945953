import { type FSWatcher, statSync, watch } from 'node:fs';
import { join } from 'node:path';
import { makeFile, takeFile } from '../write/door.ts';

/** Milliseconds in which a sign of a file just made has to come. */
const PATIENCE = 1_000;

const hasOneDisk = (a: string, b: string): boolean => {
  try {
    return statSync(a).dev === statSync(b).dev;
  } catch {
    return false;
  }
};

/**
 * Whether the system tells of changes on the disk of the notes, as network drives and shared folders often do not. It is
 * tried in the folder of the pages, since nothing is ever written among the notes; where that is on another disk it is
 * taken for granted.
 */
export const eventsArrive = (pages: string, root: string): Promise<boolean> => {
  if (!hasOneDisk(pages, root)) return Promise.resolve(true);
  const probe = join(pages, `.probe.${process.pid}.new`);
  return new Promise((resolve) => {
    let watcher: FSWatcher | undefined;
    const timer = setTimeout(() => end(false), PATIENCE);
    const end = (came: boolean): void => {
      clearTimeout(timer);
      watcher?.close();
      try {
        takeFile(probe);
      } catch {
        // A folder that takes no file away is told of when a page is written.
      }
      resolve(came);
    };
    try {
      watcher = watch(pages, () => end(true));
      watcher.on('error', () => end(false));
      makeFile(probe, '');
    } catch {
      end(false);
    }
  });
};
