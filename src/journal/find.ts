import { readdirSync, realpathSync, statSync } from 'node:fs';
import { join } from 'node:path';

/** Ending of a file of notes. */
export const ENDING = '.bowl';

/** Whether a file or folder is left out by its name. */
export const isHidden = (name: string): boolean => name.startsWith('.') || name === 'node_modules';

/**
 * The files of notes at a path: the file itself, or every `.bowl` file below a folder, in order of their names. Hidden
 * folders are left out; a link that leads back into its own path is followed once.
 * @throws the system's error when the path itself cannot be read.
 */
export const findFiles = (path: string): string[] => {
  if (!statSync(path).isDirectory()) return [path];
  const seen = new Set<string>();
  const files: string[] = [];
  const walk = (folder: string): void => {
    const real = realpathSync(folder);
    if (seen.has(real)) return;
    seen.add(real);
    for (const entry of readdirSync(folder, { withFileTypes: true }).sort((a, b) => (a.name < b.name ? -1 : 1))) {
      if (isHidden(entry.name)) continue;
      const inside = join(folder, entry.name);
      const kind = entry.isSymbolicLink() ? followed(inside) : entry;
      if (kind?.isDirectory()) walk(inside);
      else if (kind?.isFile() && entry.name.endsWith(ENDING)) files.push(inside);
    }
  };
  walk(path);
  return files;
};

/** What a link leads to; undefined for a broken one. */
const followed = (path: string): { isDirectory(): boolean; isFile(): boolean } | undefined => {
  try {
    return statSync(path);
  } catch {
    return undefined;
  }
};
