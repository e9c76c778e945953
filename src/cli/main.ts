#!/usr/bin/env node
import { setFlagsFromString } from 'node:v8';
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

// What is read stays to the end, so collections free little of it; left alone, V8 lets as much garbage pile up beside it.
setFlagsFromString('--heap-growing-percent=30');

guardOutput();
try {
  process.exitCode = await run(process.argv.slice(2));
} catch (thrown) {
  process.exitCode = failed(thrown);
}
