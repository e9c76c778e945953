import { createHash } from 'node:crypto';
import { readdirSync } from 'node:fs';
import { hostname } from 'node:os';
import { dirname, join } from 'node:path';
import { refusal } from '../refusal.ts';
import { makeFile, standsAt, takeFile } from './door.ts';
import { isRunning, startOf, TURN } from './unfinished.ts';

/*
 * Runs that change one file wait for each other in a queue of empty files beside it, one for each run, named by its
 * number in the queue and by its process. A run first says that it asks, then takes the number after the highest, and
 * comes in when nobody who asked meanwhile and nobody with a lower number is left (Lamport's bakery, Communications of
 * the ACM 17, 1974). No run ever takes away the file of one that lives, so a run that was killed holds up nobody, and
 * breaking its hold cannot break another's.
 */

/** A run in the queue, as the name of its file tells it. */
type Stand = {
  readonly name: string;
  readonly isAsking: boolean;
  readonly number: number;
  readonly host: string;
  readonly pid: number;
};

/** Milliseconds after which a run counts as gone though its process seems to live: the number was given out again. */
const STALE = 60_000;

/** Milliseconds that one and the same run is waited for. */
const PATIENCE = 20_000;

/** Milliseconds between two looks. */
const PAUSE = 5;

const pause = (): void => {
  Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, PAUSE);
};

/** Processes are numbered by machine, and a folder can be shared by several. */
const HERE = createHash('sha1').update(hostname()).digest('hex').slice(0, 8);

const nameOf = (target: string, kind: 'asks' | 'turn', number: number): string =>
  `${startOf(target)}${kind}-${number}-${HERE}-${process.pid}.new`;

const standsBeside = (target: string): Stand[] => {
  const start = startOf(target);
  return readdirSync(dirname(target)).flatMap((name) => {
    const [end = '', kind, number, host = '', pid] = (name.startsWith(start) && TURN.exec(name)) || [];
    if (kind === undefined || name.length !== start.length - 1 + end.length) return [];
    return [{ name, isAsking: kind === 'asks', number: Number(number), host, pid: Number(pid) }];
  });
};

const isOwn = ({ host, pid }: Stand): boolean => host === HERE && pid === process.pid;

const isBefore = (one: Stand, number: number): boolean =>
  one.number < number || (one.number === number && (one.host < HERE || (one.host === HERE && one.pid < process.pid)));

const isGone = (folder: string, { name, host, pid }: Stand): boolean => {
  if (host === HERE && !isRunning(pid)) return true;
  const stat = standsAt(join(folder, name));
  return stat !== undefined && Date.now() - stat.mtimeMs > STALE;
};

/** Takes a file of the queue away; one that stays is stale as soon as its process has ended. */
const leave = (path: string): void => {
  for (let tries = 0; tries < 3; tries++) {
    try {
      takeFile(path);
      return;
    } catch {
      pause();
    }
  }
};

/** Takes away what killed runs left of their queues in a folder, and what an earlier process of this number left. */
export const sweepTurns = (folder: string): void => {
  for (const name of readdirSync(folder)) {
    const [, , , host = '', pid] = (name.startsWith('.') && TURN.exec(name)) || [];
    if (host === HERE && (Number(pid) === process.pid || !isRunning(Number(pid)))) leave(join(folder, name));
  }
};

/** Waits until none of the runs that `who` gives is left; those that are gone are taken out. */
const waitFor = (target: string, path: string, who: () => readonly Stand[]): void => {
  const folder = dirname(target);
  let first = '';
  let since = Date.now();
  for (;;) {
    const living = who().filter((one) => {
      if (!isGone(folder, one)) return true;
      leave(join(folder, one.name));
      return false;
    });
    const [head] = living.sort((a, b) => a.number - b.number || a.pid - b.pid);
    if (head === undefined) return;
    if (head.name !== first) {
      first = head.name;
      since = Date.now();
    } else if (Date.now() - since > PATIENCE)
      throw refusal(
        `\`${path}\` is held by another run of this program (process ${head.pid}), so it is not written.`,
        'Wait until that has ended, or end it, and run the command again.',
      );
    pause();
  }
};

/** A turn at a file: whether it is still this run's. A run that was held up for long may have been taken for gone. */
export type Turn = { readonly isHeld: () => boolean };

/**
 * Does `work` while no other run of the program changes the file at `target`, a real path; `path` is how it is named to
 * people. Waits for the runs that came first. Throws a refusal when one of them does not end, and the system's error.
 */
export const inTurn = <T>(target: string, path: string, work: (turn: Turn) => T): T => {
  const folder = dirname(target);
  sweepTurns(folder);
  const asks = join(folder, nameOf(target, 'asks', 0));
  let turn = '';
  try {
    makeFile(asks, '');
    const number = 1 + Math.max(0, ...standsBeside(target).map((one) => one.number));
    turn = join(folder, nameOf(target, 'turn', number));
    makeFile(turn, '');
    leave(asks);
    const others = (): Stand[] => standsBeside(target).filter((one) => !isOwn(one));
    const asked = new Set(others().flatMap(({ name, isAsking }) => (isAsking ? [name] : [])));
    waitFor(target, path, () => others().filter(({ name }) => asked.has(name)));
    waitFor(target, path, () => others().filter((one) => !one.isAsking && isBefore(one, number)));
    return work({ isHeld: () => standsAt(turn) !== undefined });
  } finally {
    leave(asks);
    if (turn !== '') leave(turn);
  }
};
