import { basename } from 'node:path';

/** Letters of a file's name that its temporary one keeps: names are limited, and it has more to hold. */
const KEPT = 48;

/** How every name begins that stands beside a file while it is written. */
export const startOf = (target: string): string => `.${basename(target).slice(0, KEPT)}.`;

/** The name, beside a file, of what is to take its place: hidden, and with the number of the process that writes it. */
export const unfinishedName = (target: string): string => `${startOf(target)}${process.pid}.new`;

/** Whether a process runs on this machine, as far as the system tells. */
export const isRunning = (pid: number): boolean => {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
};

/** The end of a name in the queue before a file: what it is, its number, its machine, its process (queue.ts). */
export const TURN = /\.(asks|turn)-(\d{1,9})-([0-9a-f]{8})-(\d{1,9})\.new$/;

/**
 * Whether a name is what a run that was killed left half written: of one file, or of any. What a running process may
 * still be writing is not, but for this one's own: systems give a number out again.
 */
export const isLeftBehind = (name: string, target?: string): boolean => {
  const start = target === undefined ? '.' : startOf(target);
  const pid = name.startsWith(start) && !TURN.test(name) ? /\.(\d+)\.new$/.exec(name)?.[1] : undefined;
  if (pid === undefined) return false;
  return (target !== undefined && Number(pid) === process.pid) || !isRunning(Number(pid));
};
