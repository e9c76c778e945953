import { printTyped, remark } from './print.ts';
import { writeWhole } from './write.ts';

/** Puts a page to standard output, or into the file that `-o` names. */
export const deliver = (page: string, output: string | undefined): void => {
  if (output === undefined) printTyped(page);
  else {
    writeWhole(output, Buffer.from(page.endsWith('\n') ? page : `${page}\n`, 'utf8'));
    remark(`Written to ${output}.`);
  }
};
