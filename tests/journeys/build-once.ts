import { chmodSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { TestProject } from 'vitest/node';

declare module 'vitest' {
  interface ProvidedContext {
    /** The folder into which the program that the tests of this run use is built; see `built.ts`. */
    built: string;
  }
}

/** A folder for the program of one run of tests, taken away at the end. */
export default ({ provide }: TestProject): (() => void) => {
  const folder = mkdtempSync(join(tmpdir(), 'bowlbook-built-'));
  // Some tests run it as somebody else.
  chmodSync(folder, 0o755);
  provide('built', folder);
  return () => rmSync(folder, { recursive: true, force: true });
};
