import { performance } from 'node:perf_hooks';

/** What to look at now: all files, or those named. `since`: when the first sign of a change came, on the same clock as `now`. */
export type Job = { readonly files: ReadonlySet<string> | undefined; readonly now: number; readonly since: number };

/** When to look: soon after a sign, beside that every while, one look at a time. */
export type Pulse = {
  /** A sign that a file may have changed; without a file, that any may have. */
  readonly sign: (file?: string) => void;
  /** Looks at all at once. */
  readonly now: () => void;
  /** Ends it, after the look under way. */
  readonly stop: () => Promise<void>;
};

/** Quiet that is waited for after a sign, ms: a single save is taken in at once, a burst of them when it is over. */
const QUIET = 15;
const QUIET_IN_BURST = 150;
const BURST = 400;
const LONGEST_BURST = 1_000;

/** A look through all files may take up this part of the time, one in so many, but is never waited for longer than ms. */
const SHARE = 50;
const LONGEST_WAIT = 5_000;

/** What came of a look. */
export type Looked = {
  /** Milliseconds that the looking took, without what it set off. */
  readonly took: number;
  /** Milliseconds after which what was looked at needs another look, if it does. */
  readonly again: number | undefined;
};

/**
 * Begins the pulse. `work` does a look and what follows from it; what it throws is thrown on. `every`: milliseconds between
 * two looks at all files.
 */
export const startPulse = (work: (job: Job) => Promise<Looked>, every: () => number): Pulse => {
  const files = new Set<string>();
  const doubtful = new Set<string>();
  let all = true;
  let since: number | undefined;
  let lastSign = Number.NEGATIVE_INFINITY;
  let signAt = Number.POSITIVE_INFINITY;
  let againAt = Number.POSITIVE_INFINITY;
  let sweepAt = performance.now();
  let timer: NodeJS.Timeout | undefined;
  let running: Promise<void> | undefined;
  let stopped = false;

  const arm = (): void => {
    clearTimeout(timer);
    if (stopped || running !== undefined) return;
    const at = Math.min(signAt, againAt, sweepAt);
    timer = setTimeout(beat, Math.max(0, at - performance.now()));
  };

  const look = async (): Promise<void> => {
    const now = performance.now();
    const isSweep = all || now >= sweepAt;
    const looked = new Set(files);
    if (now >= againAt) for (const file of doubtful) looked.add(file);
    const job: Job = { files: isSweep ? undefined : looked, now, since: since ?? now };
    files.clear();
    all = false;
    since = undefined;
    signAt = Number.POSITIVE_INFINITY;
    if (isSweep || now >= againAt) {
      doubtful.clear();
      againAt = Number.POSITIVE_INFINITY;
    }
    const { took, again } = await work(job);
    const then = performance.now();
    if (isSweep) sweepAt = then + Math.max(every(), Math.min(SHARE * took, LONGEST_WAIT));
    if (again === undefined) return;
    if (isSweep) sweepAt = Math.min(sweepAt, then + again);
    else {
      for (const file of looked) doubtful.add(file);
      againAt = Math.min(againAt, then + again);
    }
  };

  const beat = (): void => {
    if (stopped || running !== undefined) return;
    const done = look();
    running = done.then(
      () => undefined,
      () => undefined,
    );
    void done.finally(() => {
      running = undefined;
      arm();
    });
  };

  const sign = (file?: string): void => {
    const now = performance.now();
    const quiet = now - lastSign < BURST ? QUIET_IN_BURST : QUIET;
    lastSign = now;
    since ??= now;
    if (file === undefined) all = true;
    else files.add(file);
    signAt = Math.min(now + quiet, since + LONGEST_BURST);
    arm();
  };

  arm();
  return {
    sign,
    now: () => {
      all = true;
      sweepAt = performance.now();
      arm();
    },
    stop: async () => {
      stopped = true;
      clearTimeout(timer);
      await running;
    },
  };
};
