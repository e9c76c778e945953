import { readdirSync, rmSync } from 'node:fs';
import { basename, join } from 'node:path';

/** Letters of a file's name that its temporary one keeps: names are limited, and it has more to hold. */
const KEPT = 48;

const startOf = (target: string): string => `.${basename(target).slice(0, KEPT)}.`;

/** The name, beside a file, of what is to take its place: hidden, and with the number of the process that writes it. */
export const unfinishedName = (target: string): string => `${startOf(target)}${process.pid}.new`;

const isRunning = (pid: number): boolean => {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
};

/**
 * Takes away what a run that was killed left half written in a folder: of one file, or of all. What a running process
 * may still be writing stays, but for this one's own: systems give a number out again. Never throws.
 */
export const sweepUnfinished = (folder: string, target?: string): void => {
  const start = target === undefined ? '.' : startOf(target);
  try {
    for (const name of readdirSync(folder)) {
      const pid = name.startsWith(start) ? /\.(\d+)\.new$/.exec(name)?.[1] : undefined;
      const own = target !== undefined && Number(pid) === process.pid;
      if (pid !== undefined && (own || !isRunning(Number(pid)))) rmSync(join(folder, name), { force: true });
    }
  } catch {
    // What cannot be taken away now is no reason to stop; the write says what is wrong with the folder.
  }
};
