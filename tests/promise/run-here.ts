import { vi } from 'vitest';
import { run } from '../../src/cli/program.ts';
import { tellFailure } from '../../src/cli/tell-failure.ts';

/** What a command came to, run in this process. */
export type RanHere = { readonly code: number; readonly out: string; readonly err: string };

/** Runs a command here as the program does, into a pipe or as if both streams were a terminal. */
export const runHere = async (words: readonly string[], isTerminal = false): Promise<RanHere> => {
  const said = { stdout: '', stderr: '' };
  const before = { stdout: process.stdout.isTTY, stderr: process.stderr.isTTY };
  const spies = (['stdout', 'stderr'] as const).map((name) => {
    process[name].isTTY = isTerminal;
    return vi.spyOn(process[name], 'write').mockImplementation((text) => {
      said[name] += String(text);
      return true;
    });
  });
  try {
    const code = await run(words).catch(tellFailure);
    return { code, out: said.stdout, err: said.stderr };
  } finally {
    for (const spy of spies) spy.mockRestore();
    process.stdout.isTTY = before.stdout;
    process.stderr.isTTY = before.stderr;
  }
};
