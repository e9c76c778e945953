import type { Parameters } from 'fast-check';

const seconds = Number(process.env.BOWLBOOK_FUZZ ?? 0);

/** How long the tests under this folder may run at most, in milliseconds. */
export const LIMIT = seconds * 1000 + 60_000;

/**
 * How much to try: a fixed course of so many runs, or, with `BOWLBOOK_FUZZ` in the environment, new ones for that many
 * seconds.
 */
export const budget = <T>(numRuns: number): Parameters<T> =>
  seconds > 0
    ? { numRuns: Number.MAX_SAFE_INTEGER, interruptAfterTimeLimit: seconds * 1000, markInterruptAsFailure: false }
    : { numRuns, seed: 20_260_904 };
