import { isNotes, notesRead } from './open-journal.ts';
import { print, printJson, remark } from './print.ts';
import { refusal } from './refusal.ts';
import { writePage } from './write/page.ts';
import { readersOfAll } from './write/privacy.ts';

/** Whether a whole page is asked for: with `--html`, or by the name of the file that `-o` gives. */
export const isPage = ({ html, output }: { readonly html?: true; readonly output?: string }): boolean =>
  html === true || (output !== undefined && /\.html?$/i.test(output));

/** Puts a text into the file that `-o` names. Throws a refusal when that is one of notes. */
const putInto = (page: string, output: string): void => {
  if (isNotes(output))
    throw refusal(`\`${output}\` is a file of notes, and no page is put in its place.`, 'Name another file with `-o`.');
  const { grounds, files } = notesRead();
  writePage(output, Buffer.from(page.endsWith('\n') ? page : `${page}\n`, 'utf8'), grounds, readersOfAll(files));
  remark(`Written to ${output}.`);
};

/** Puts a page to standard output, or into the file that `-o` names. Throws a refusal when that is one of notes. */
export const deliver = (page: string, output: string | undefined): void => {
  if (output === undefined) print(page);
  else putInto(page, output);
};

/** The same for a value as JSON. */
export const deliverJson = (value: unknown, output?: string): void => {
  const json = JSON.stringify(value, undefined, 2);
  if (output === undefined) printJson(json);
  else putInto(json, output);
};
