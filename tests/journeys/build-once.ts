import { spawnSync } from 'node:child_process';
import { chmodSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { TestProject } from 'vitest/node';

declare module 'vitest' {
  interface ProvidedContext {
    /** The entry of the program that the tests of this run use. */
    entry: string;
  }
}

/** Builds the program for one run of tests, in a folder of its own, and takes it away at the end. */
export default ({ provide }: TestProject): (() => void) => {
  const folder = mkdtempSync(join(tmpdir(), 'bowlbook-built-'));
  // Some tests run it as somebody else.
  chmodSync(folder, 0o755);
  const built = spawnSync(process.execPath, ['.scripts/build.mjs', folder], { encoding: 'utf8' });
  if (built.status !== 0) throw new Error(`the build failed:\n${built.stderr}`);
  provide('entry', join(folder, 'bowlbook.js'));
  return () => rmSync(folder, { recursive: true, force: true });
};
