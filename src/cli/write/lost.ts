import type { Stats } from 'node:fs';
import { remark } from '../print.ts';
import { standsAt } from './door.ts';

/** Files of this run of which it was said what is not as it was. */
const told = new Set<string>();

/** What a file that was put in the place of another could not take over from it, as far as the system tells. */
const lostOf = (old: Stats, now: Stats | undefined): string[] => [
  ...(old.nlink > 1
    ? [
        `had ${old.nlink} names on the disk (hard links), and has the new text under this one alone: the others keep the old one.`,
      ]
    : []),
  ...(now !== undefined && old.uid !== now.uid
    ? ['belonged to another user, and is yours now: the system lets nobody give a file away.']
    : []),
  ...(now !== undefined && old.gid !== now.gid
    ? ['belonged to a group that you are not in, and can be read and written by its group no more.']
    : []),
];

/** Says once for a file what is not as it was; a rename makes a new file, so names and owners are not its own. */
export const sayLost = (path: string, target: string, old: Stats): void => {
  if (told.has(target)) return;
  const lost = lostOf(old, standsAt(target));
  if (lost.length > 0) told.add(target);
  for (const what of lost) remark(`\`${path}\` ${what}`);
};
