import { statSync } from 'node:fs';
import { dirname, resolve } from 'node:path';

/** Who besides the owner may read all of some notes: each of its group, each other. */
export type Privacy = { readonly group: boolean; readonly others: boolean };

const both = (one: Privacy, other: Privacy): Privacy => ({
  group: one.group && other.group,
  others: one.others && other.others,
});

/** Who may read a file, through all folders above it; nobody where that cannot be told. */
const readersOf = (path: string, known: Map<string, Privacy>): Privacy => {
  const had = known.get(path);
  if (had !== undefined) return had;
  const stat = statSync(path, { throwIfNoEntry: false });
  const bit = stat?.isDirectory() ? 0o1 : 0o4;
  const own = { group: ((stat?.mode ?? 0) & (bit << 3)) !== 0, others: ((stat?.mode ?? 0) & bit) !== 0 };
  const readers = dirname(path) === path ? own : both(own, readersOf(dirname(path), known));
  known.set(path, readers);
  return readers;
};

/** Who may read every one of the notes: what shows some of them is for nobody else. */
export const readersOfAll = (notes: Iterable<string>): Privacy => {
  const known = new Map<string, Privacy>();
  let all: Privacy = { group: true, others: true };
  for (const path of notes) {
    try {
      all = both(all, readersOf(resolve(path), known));
    } catch {
      // A file that went or is shut in shows nothing now.
    }
  }
  return all;
};

/** The widest mode of a page that shows such notes; the user's mask takes from it. */
export const fileMode = ({ group, others }: Privacy): number => 0o600 | (group ? 0o060 : 0) | (others ? 0o006 : 0);

/** The widest mode of a folder of such pages; the user's mask takes from it. */
export const folderMode = ({ group, others }: Privacy): number => 0o700 | (group ? 0o070 : 0) | (others ? 0o007 : 0);
