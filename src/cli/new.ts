import { mkdirSync, readdirSync } from 'node:fs';
import { dirname, join } from 'node:path';
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
      `  bowlbook check ${folder}`,
      `  bowlbook card juno ${folder}`,
      `  bowlbook now "cut" ${folder}`,
      '',
      'The last one adds the line to the visit of today, with the time in it.',
    ].join('\n'),
  );
  return 0;
};
