import { mkdirSync, readdirSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { reasonOf } from './open-journal.ts';
import { print } from './print.ts';
import { refusal } from './refusal.ts';
import { starterFiles } from './starter.ts';
import { dayOf } from './today.ts';
import { writeWhole } from './write.ts';

export type NewOptions = { readonly on?: string };

const namesIn = (folder: string): string[] => {
  try {
    return readdirSync(folder);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return [];
    throw refusal(`\`${folder}\` cannot hold a journal: ${reasonOf(error)}.`, 'Name a new folder.');
  }
};

const makeFolder = (folder: string): void => {
  try {
    mkdirSync(folder, { recursive: true });
  } catch (error) {
    throw refusal(`The folder \`${folder}\` cannot be made: ${reasonOf(error)}.`);
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
  for (const { path } of files) makeFolder(dirname(path));
  for (const { path, text } of files) writeWhole(path, Buffer.from(text, 'utf8'));
  print(
    [
      'A journal to begin with:',
      '',
      ...files.map(({ path }) => `  ${path}`),
      '',
      'Everything in it is invented. Put your own salon, shelf and clients in its place, then',
      '',
      ...(resolve(folder) === process.cwd() ? [] : [`  cd ${quotedForShell(folder)}`]),
      '  bowlbook check',
      '  bowlbook card juno',
      '  bowlbook mix "40 cream 6/1 + 6%"',
      '',
      'While a visit of today is under way, `bowlbook now "check A gold"` adds a line to it, with the time in it.',
    ].join('\n'),
  );
  return 0;
};
