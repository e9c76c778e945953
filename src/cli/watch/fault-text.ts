import { linesWithoutControls } from '../../text/width.ts';

/** Tells of a fault in the program itself that does not end the watching. `when`: what was under way, and what stands now. */
export const faultText = (error: unknown, when: string): string => {
  const { stack, message } = error instanceof Error ? error : new Error(String(error));
  const what = linesWithoutControls(stack ?? message);
  return `A fault in the program while ${when}; the watching goes on. ${what}`;
};
