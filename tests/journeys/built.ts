import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { inject } from 'vitest';

/**
 * The entry of the built program. The first test of a run that asks builds it, and others wait for it meanwhile: most runs
 * of a few tests need none.
 */
export const builtEntry = async (): Promise<string> => {
  const folder = join(inject('built'), 'dist');
  const entry = join(folder, 'bowlbook.js');
  try {
    mkdirSync(join(inject('built'), 'begun'));
    const built = spawnSync(process.execPath, ['.scripts/build.mjs', folder], { encoding: 'utf8' });
    if (built.status !== 0) mkdirSync(join(inject('built'), 'failed'));
    if (built.status !== 0) throw new Error(`the build failed:\n${built.stderr}`);
  } catch (error) {
    if (!(error instanceof Error && 'code' in error && error.code === 'EEXIST')) throw error;
  }
  // The build writes the entry last.
  for (; !existsSync(entry); await setTimeout(100))
    if (existsSync(join(inject('built'), 'failed'))) throw new Error('the build failed');
  return entry;
};
