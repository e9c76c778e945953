import { withoutControls } from '../text/width.ts';

const JSON_CONTROL = /[\u007f-\u009f\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/g;

/** The same JSON with nothing in it that a terminal obeys: JSON escapes C0 by itself, and not the rest. */
const escapedJson = (text: string): string =>
  text.replace(JSON_CONTROL, (control) => `\\u${control.charCodeAt(0).toString(16).padStart(4, '0')}`);

/** Writes to standard output, with one line end at the end. */
export const print = (text: string): void => {
  process.stdout.write(text.endsWith('\n') ? text : `${text}\n`);
};

/** Writes to standard error, with one line end at the end. */
export const remark = (text: string): void => {
  process.stderr.write(text.endsWith('\n') ? text : `${text}\n`);
};

/** Writes a text that holds what was typed in the notes: on a terminal its control characters are shown, not obeyed. */
export const printTyped = (text: string): void =>
  print(process.stdout.isTTY ? text.split('\n').map(withoutControls).join('\n') : text);

/** Writes a value as JSON to standard output; to a terminal without a character that it would obey. */
export const printJson = (value: unknown): void => {
  const text = JSON.stringify(value, undefined, 2);
  print(process.stdout.isTTY ? escapedJson(text) : text);
};

/** Ends quietly when whoever reads the output has gone (`bowlbook check | head`). */
export const guardOutput = (): void => {
  for (const stream of [process.stdout, process.stderr]) {
    stream.on('error', (error: NodeJS.ErrnoException) => {
      if (error.code === 'EPIPE') process.exit(process.exitCode ?? 0);
      throw error;
    });
  }
};
