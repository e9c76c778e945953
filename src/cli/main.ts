import { withoutControls } from '../text/width.ts';
import { paintFor } from './colour.ts';
import { guardOutput, remark } from './print.ts';
import { run } from './program.ts';
import { isRefusal } from './refusal.ts';

/** Says why nothing came of it, and gives the exit code: 2 for a refusal, 3 for a fault in the program. */
const failed = (thrown: unknown): number => {
  const paint = paintFor(process.stderr);
  if (isRefusal(thrown)) {
    remark(
      [thrown.message, thrown.todo].flatMap((text) => (text === undefined ? [] : withoutControls(text))).join('\n'),
    );
    return 2;
  }
  const { stack, message } = thrown instanceof Error ? thrown : new Error(String(thrown));
  remark(paint.stop('A fault in the program, not in the notes; nothing was left half written.'));
  remark(stack ?? message);
  return 3;
};

guardOutput();

/** Settles when the command has ended; nothing is thrown out of it. */
export const ended: Promise<void> = run(process.argv.slice(2))
  .catch(failed)
  .then((code) => {
    process.exitCode = code;
  });
