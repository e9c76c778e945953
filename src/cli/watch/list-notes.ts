import { type Dirent, readdirSync, realpathSync, type Stats, statSync } from 'node:fs';
import { join } from 'node:path';
import { ENDING, isHidden } from '../../journal/find.ts';

/** The files of notes below a folder as it stands; unlike a command that reads once, watching outlives what it meets. */
export type Listed = {
  /** False while the folder itself is away. */
  readonly isThere: boolean;
  readonly files: ReadonlySet<string>;
  /** Folders that are there and cannot be looked into; what is below them is not known to be gone. */
  readonly closed: readonly string[];
};

const statOf = (path: string): Stats | undefined => {
  try {
    return statSync(path);
  } catch {
    return undefined;
  }
};

const isAway = (error: unknown): boolean => ['ENOENT', 'ENOTDIR'].includes((error as NodeJS.ErrnoException).code ?? '');

/** Lists the same files as `findFiles`, without those below `leftOut`, a real path. Never throws. */
export const listNotes = (root: string, leftOut: string): Listed => {
  const files = new Set<string>();
  const closed: string[] = [];
  const seen = new Set<string>();
  const walk = (folder: string): boolean => {
    let entries: Dirent[];
    try {
      const real = realpathSync(folder);
      if (real === leftOut || seen.has(real)) return true;
      seen.add(real);
      entries = readdirSync(folder, { withFileTypes: true });
    } catch (error) {
      if (isAway(error)) return false;
      closed.push(folder);
      return true;
    }
    for (const entry of entries.sort((a, b) => (a.name < b.name ? -1 : 1))) {
      if (isHidden(entry.name)) continue;
      const inside = join(folder, entry.name);
      const kind = entry.isSymbolicLink() ? statOf(inside) : entry;
      if (kind?.isDirectory()) walk(inside);
      else if (kind?.isFile() && entry.name.endsWith(ENDING)) files.add(inside);
    }
    return true;
  };
  return { isThere: walk(root), files, closed };
};
