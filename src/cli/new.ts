import { readdirSync } from 'node:fs';
import { dirname, join, resolve, sep } from 'node:path';
import { withoutControls } from '../text/width.ts';
import { reasonOf } from './open-journal.ts';
import { print } from './print.ts';
import { isRefusal, refusal } from './refusal.ts';
import { starterFiles } from './starter.ts';
import { dayOf } from './today.ts';
import { makeFolder, takeFile, takeFolder } from './write/door.ts';
import { writeNotes } from './write/notes.ts';
import { placeFor } from './write/place.ts';

export type NewOptions = { readonly on?: string };

const namesIn = (folder: string): string[] => {
  try {
    return readdirSync(folder);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return [];
    throw refusal(`\`${folder}\` cannot hold a journal: ${reasonOf(error)}.`, 'Name a new folder.');
  }
};

/** Makes the folder of a file and those above it, and gives the first that was not there. */
const makeRoom = (path: string): string | undefined => {
  const folder = dirname(path);
  try {
    return makeFolder(dirname(placeFor(path, [])));
  } catch (error) {
    if (isRefusal(error)) throw error;
    throw refusal(
      `The folder \`${folder}\` cannot be made: ${reasonOf(error)}.`,
      'Name a folder where you may write, and where there is room.',
    );
  }
};

const attempt = (take: () => void): void => {
  try {
    take();
  } catch {
    // What cannot be taken away stays; the refusal says what went wrong.
  }
};

/** The folders from the one that holds `path` up to `first`, the deepest first. */
const foldersUpTo = (path: string, first: string): string[] => {
  const above: string[] = [];
  for (let at = resolve(dirname(path)); at === first || at.startsWith(first + sep); at = dirname(at)) above.push(at);
  return above;
};

/** Writes every file or none: what was made before one failed is taken away again, folders as far as they are empty. */
const writeAll = (files: readonly { readonly path: string; readonly text: string }[]): void => {
  const folders: string[] = [];
  const written: string[] = [];
  try {
    for (const { path } of files) {
      const first = makeRoom(path);
      if (first !== undefined) folders.push(...foldersUpTo(placeFor(path, []), first));
    }
    for (const { path, text } of files) {
      writeNotes(path, Buffer.from(text, 'utf8'), Buffer.alloc(0), []);
      written.push(placeFor(path, []));
    }
  } catch (error) {
    for (const path of written) attempt(() => takeFile(path));
    for (const path of folders.sort((one, other) => other.length - one.length)) attempt(() => takeFolder(path));
    throw error;
  }
};

/** A path as it is typed in a shell: in quotes where it holds more than letters, digits and plain marks. */
const quotedForShell = (path: string): string =>
  /^[\p{L}\p{N}._/~\\:-]+$/u.test(path) ? path : `"${path.replace(/["\\$`]/g, '\\$&')}"`;

/** `bowlbook new`: a journal to begin with, in a new or empty folder. */
export const begin = (folder: string, options: NewOptions): number => {
  const on = dayOf(options.on);
  const held = namesIn(folder);
  if (held.length > 0)
    throw refusal(
      `\`${folder}\` is not empty: it holds ${held.length === 1 ? `\`${held[0]}\`` : `${held.length} things`}.`,
      'Name a new folder; this command overwrites nothing.',
    );
  const files = starterFiles(on).map(({ path, text }) => ({ path: join(folder, path), text }));
  writeAll(files);
  print(
    [
      'A journal to begin with:',
      '',
      ...files.map(({ path }) => `  ${withoutControls(path)}`),
      '',
      'Everything in it is invented. Put your own salon, shelf and clients in its place, then',
      '',
      ...(resolve(folder) === process.cwd() ? [] : [`  cd ${withoutControls(quotedForShell(folder))}`]),
      '  bowlbook check',
      '  bowlbook card juno',
      '  bowlbook mix "40 cream 6/1 + 6%"',
      '',
      'While a visit of today is under way, `bowlbook now "check A gold"` adds a line to it, with the time in it.',
    ].join('\n'),
  );
  return 0;
};
