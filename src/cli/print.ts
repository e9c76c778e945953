import { withoutControls } from '../text/width.ts';

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

/** Writes a value as JSON to standard output. */
export const printJson = (value: unknown): void => print(JSON.stringify(value, undefined, 2));

/** Ends quietly when whoever reads the output has gone (`bowlbook check | head`). */
export const guardOutput = (): void => {
  for (const stream of [process.stdout, process.stderr]) {
    stream.on('error', (error: NodeJS.ErrnoException) => {
      if (error.code === 'EPIPE') process.exit(process.exitCode ?? 0);
      throw error;
    });
  }
};
