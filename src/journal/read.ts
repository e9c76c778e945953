import { readFileSync } from 'node:fs';
import { findFiles } from './find.ts';
import { type Journal, joinSources } from './journal.ts';
import { readSource, type Source } from './source.ts';

/** A file that could not be read, and what the system said. */
export type Unreadable = { readonly path: string; readonly reason: string };

/** Reads every file of notes at the paths. A file that cannot be read is reported, and the rest is read. */
export const readJournal = (paths: readonly string[]): { journal: Journal; unreadable: readonly Unreadable[] } => {
  const unreadable: Unreadable[] = [];
  const sources = new Map<string, Source>();
  for (const path of paths.flatMap(findFiles)) {
    if (sources.has(path)) continue;
    try {
      sources.set(path, readSource(path, readFileSync(path)));
    } catch (error) {
      unreadable.push({ path, reason: error instanceof Error ? error.message : String(error) });
    }
  }
  return { journal: joinSources(sources.values()), unreadable };
};
