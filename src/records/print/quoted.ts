import { bindFree } from '../bind/visit-lines.ts';
import type { Name, Text } from '../schema/values.ts';
import { type Said, spaced } from './said.ts';

/** A text in the quotation marks that it does not hold itself. */
const inMarks = (text: string): string => (/["“”]/.test(text) ? `«${text}»` : `"${text}"`);

/** Whether no kind of quotation marks can hold a text. */
const isMixed = (text: string): boolean => /["“”]/.test(text) && text.includes('»');

/**
 * A remark in quotation marks. One that holds both kinds of marks was read from several quotations, which the reader
 * joins by a space, and is written as several.
 */
export const quoted = (text: string): string => {
  const quotations: string[] = [];
  let open: string | undefined;
  for (const word of text.split(' ')) {
    const longer: string = open === undefined ? word : `${open} ${word}`;
    if (open !== undefined && isMixed(longer)) {
      quotations.push(inMarks(open));
      open = word;
    } else open = longer;
  }
  return [...quotations, inMarks(open ?? '')].join(' ');
};

/** How a line closes: its remark, and whose hand. */
export const closing = ({ says, by }: { says?: Said<Text> | undefined; by?: Said<Name> | undefined }): string =>
  spaced(says && quoted(says.text), by && `by ${by.name}`);

/** Text that takes the rest of its line: as it is, or in marks where someone is named or it would not read as it is. */
export const freeText = (text: string, by: Said<Name> | undefined): string => {
  const isPlain = by === undefined && bindFree(` ${text}`, 0).text === text;
  return spaced(isPlain ? text : inMarks(text), by && `by ${by.name}`);
};
