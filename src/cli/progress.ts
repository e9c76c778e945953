import { performance } from 'node:perf_hooks';
import { hasStatusLine, statusLine } from './print.ts';

/** Milliseconds that work may last before it says how far it is, and between two such words. */
const PATIENCE = 500;
const STEP = 100;

/** Says how far some work is, on one line of a terminal, once it lasts; `done` takes the line away. */
export type Progress = { readonly say: (text: string) => void; readonly done: () => void };

/** Progress on standard error; nothing at all when that is not a terminal. */
export const startProgress = (): Progress => {
  if (!hasStatusLine()) return { say: () => undefined, done: () => undefined };
  let next = performance.now() + PATIENCE;
  let shown = false;
  return {
    say: (text) => {
      const now = performance.now();
      if (now < next) return;
      next = now + STEP;
      shown = true;
      statusLine(text);
    },
    done: () => {
      if (shown) statusLine('');
      shown = false;
    },
  };
};
