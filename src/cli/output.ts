import { printTyped, remark } from './print.ts';
import { writeWhole } from './write.ts';

/** Whether a whole page is asked for: with `--html`, or by the name of the file that `-o` gives. */
export const isPage = ({ html, output }: { readonly html?: true; readonly output?: string }): boolean =>
  html === true || (output !== undefined && /\.html?$/i.test(output));

/** Puts a page to standard output, or into the file that `-o` names. */
export const deliver = (page: string, output: string | undefined): void => {
  if (output === undefined) printTyped(page);
  else {
    writeWhole(output, Buffer.from(page.endsWith('\n') ? page : `${page}\n`, 'utf8'));
    remark(`Written to ${output}.`);
  }
};
