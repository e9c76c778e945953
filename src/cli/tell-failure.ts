import { linesWithoutControls } from '../text/width.ts';
import { paintFor } from './colour.ts';
import { leftText } from './left-text.ts';
import { remark, remarkLines } from './print.ts';
import { isRefusal } from './refusal.ts';
import { leftOnDisk } from './write/door.ts';

/** Says why nothing came of a command, and gives the exit code: 2 for a refusal, 3 for a fault in the program. */
export const tellFailure = (thrown: unknown): number => {
  if (isRefusal(thrown)) {
    for (const text of [thrown.message, thrown.todo]) if (text !== undefined) remark(text);
    return 2;
  }
  const { stack, message } = thrown instanceof Error ? thrown : new Error(String(thrown));
  remarkLines(paintFor('stderr').stop(`A fault in the program, not in the notes. ${leftText(leftOnDisk())}`));
  remarkLines(linesWithoutControls(stack ?? message));
  return 3;
};
