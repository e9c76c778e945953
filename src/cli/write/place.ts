import { realpathSync, statSync } from 'node:fs';
import { basename, dirname, extname, isAbsolute, join, relative, resolve, sep } from 'node:path';
import { ENDING, isHidden } from '../../journal/find.ts';
import { refusal } from '../refusal.ts';
import { standsAt } from './door.ts';

/** Whether a path lies in a folder, or is it; both absolute. */
export const isBelow = (inner: string, outer: string): boolean => {
  const way = relative(outer, inner);
  return !isAbsolute(way) && way.split(sep)[0] !== '..';
};

/** Endings of a file that a link among the notes may lead to: of notes, and of plain text that is kept as notes. */
const LINKED: readonly string[] = [ENDING, '.txt'];

/** Whether a folder that is named inside the current one leads out of it through a link. */
const leadsOut = (path: string): boolean =>
  isBelow(resolve(path), resolve('.')) && !isBelow(realpathSync(path), realpathSync('.'));

/**
 * The folders that the paths given name or stand in; the current one when none is given. One that leads out of the current
 * folder through a link is no ground: the folder it stands in is, so nothing behind the link is written.
 */
export const groundsOf = (paths: readonly string[]): string[] =>
  (paths.length === 0 ? ['.'] : paths).map((path) =>
    statSync(path, { throwIfNoEntry: false })?.isDirectory() && !leadsOut(path) ? path : dirname(path),
  );

/** The innermost of the folders that a path, as it is written, lies in; where it lies in none, the folder it stands in. */
const groundUnder = (path: string, grounds: readonly string[]): string => {
  const around = (folders: readonly string[]): string | undefined =>
    folders
      .filter((one) => isBelow(resolve(path), resolve(one)))
      .sort((a, b) => resolve(b).length - resolve(a).length)[0];
  return around(grounds) ?? around(['.']) ?? dirname(path);
};

const linkOut = (path: string, target: string, ground: string): Error =>
  refusal(
    `\`${path}\` leads through a link to \`${target}\`, which is not in \`${ground}\`, so it is not written.`,
    'Name the folder that it is really in.',
  );

/** The real path of the folder that is to hold a path, whether or not it is there yet; links in it are followed. */
const realFolder = (path: string): string => {
  const folder = dirname(path);
  const [stands, rest] = standing(folder);
  return join(realpathSync(stands), rest);
};

/** The part of a path that is there, and what is still to be made of it. */
const standing = (path: string): readonly [string, string] => {
  if (standsAt(path) !== undefined || dirname(path) === path) return [path, ''];
  const [stands, rest] = standing(dirname(path));
  return [stands, join(rest, basename(path))];
};

/**
 * The real path at which something named `path` may be made or replaced; a link of that name is not followed, and its
 * folder lies in the folder that the path, as it is written, lies in. `grounds`: the folders of the notes.
 * Throws a refusal where a link leads elsewhere, and the system's error.
 */
export const placeFor = (path: string, grounds: readonly string[]): string => {
  const ground = groundUnder(path, grounds);
  const target = join(realFolder(path), basename(resolve(path)));
  const [stands] = standing(ground);
  // A folder that is not there yet cannot be a link.
  if (stands === ground && !isBelow(target, realpathSync(ground))) throw linkOut(path, target, ground);
  return target;
};

/** Throws a refusal when a path leads to something that is neither a file nor missing: reading it might never end. */
export const refuseNoFile = (path: string): void => {
  const stat = statSync(path, { throwIfNoEntry: false });
  if (stat?.isDirectory()) throw refusal(`\`${path}\` is a folder, and a file is to be written.`, 'Name a file in it.');
  if (stat !== undefined && !stat.isFile())
    throw refusal(`\`${path}\` is no file, so nothing is written to it.`, 'Name a file.');
};

/**
 * The real path of a file of notes that may be changed. A link is followed where it leads to a file of notes or text in
 * the same folder as the notes that it was found in. Throws as `placeFor`.
 */
export const notesPlace = (path: string, grounds: readonly string[]): string => {
  const own = placeFor(path, grounds);
  if (!standsAt(own)?.isSymbolicLink()) return own;
  const ground = groundUnder(path, grounds);
  const real = realpathSync(ground);
  const target = realpathSync(own);
  if (!isBelow(target, real)) throw linkOut(path, target, ground);
  if (!LINKED.includes(extname(target)) || relative(real, target).split(sep).some(isHidden))
    throw refusal(
      `\`${path}\` is a link to \`${target}\`, which is no file of notes, so it is not written.`,
      `Put the notes themselves there, in a file whose name ends in \`${ENDING}\`.`,
    );
  return target;
};
