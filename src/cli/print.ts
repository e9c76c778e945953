import { linesWithoutControls, withoutControls } from '../text/width.ts';
import { PAINT } from './colour.ts';

/*
 * The one door to the terminal: nothing else in the program writes to standard output or standard error (a test walks the
 * source). What a terminal would obey is shown and not obeyed, wherever it came from: notes, names of files, words of the
 * command line, the system's own messages. The colour that the program puts in itself is all that goes through.
 */

const JSON_CONTROL = /[\u007f-\u009f\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/g;

/** The same JSON with nothing in it that a terminal obeys: JSON escapes C0 by itself, and not the rest. */
const escapedJson = (text: string): string =>
  text.replace(JSON_CONTROL, (control) => `\\u${control.charCodeAt(0).toString(16).padStart(4, '0')}`);

/** A text with the program's own colour in it, and nothing else that a terminal would obey. */
const painted = (text: string): string =>
  text
    .split(PAINT)
    .map((part, index) => (index % 2 === 0 ? linesWithoutControls(part) : part))
    .join('');

const ended = (text: string): string => (text.endsWith('\n') ? text : `${text}\n`);

/** Writes to standard output, with one line end at the end. Into a pipe or a file it goes as it is. */
export const print = (text: string): void => {
  process.stdout.write(ended(process.stdout.isTTY ? linesWithoutControls(text) : text));
};

/** Writes one line to standard output: what it holds cannot make it two. */
export const printLine = (text: string): void => print(withoutControls(text));

/** Writes a text that holds colour to standard output; what of it was typed has to be without control characters. */
export const printPainted = (text: string): void => {
  process.stdout.write(ended(process.stdout.isTTY ? painted(text) : text));
};

/** Writes JSON, made already, to standard output; to a terminal without a character that it would obey. */
export const printJson = (json: string): void => {
  process.stdout.write(ended(process.stdout.isTTY ? escapedJson(json) : json));
};

/** Writes one line to standard error: what it holds cannot make it two, and nothing in it is obeyed. */
export const remark = (text: string): void => {
  process.stderr.write(`${withoutControls(text)}\n`);
};

/** Writes a text of several lines, with colour or none, to standard error; nothing else in it is obeyed. */
export const remarkLines = (text: string): void => {
  process.stderr.write(ended(painted(text)));
};

/** Whether standard error is a terminal, where one line can be written over. */
export const hasStatusLine = (): boolean => process.stderr.isTTY === true;

/** Writes the last line of the terminal anew; an empty text takes it away. */
export const statusLine = (text: string): void => {
  process.stderr.write(`\r\x1b[K${withoutControls(text)}`);
};

/** What goes to a terminal that was named as a file: as `print` writes it. */
export const forTerminal = (bytes: Uint8Array): Uint8Array =>
  Buffer.from(linesWithoutControls(Buffer.from(bytes).toString('utf8')), 'utf8');

/** Ends quietly when whoever reads the output has gone (`bowlbook check | head`). */
export const guardOutput = (): void => {
  for (const stream of [process.stdout, process.stderr]) {
    stream.on('error', (error: NodeJS.ErrnoException) => {
      if (error.code === 'EPIPE') process.exit(process.exitCode ?? 0);
      throw error;
    });
  }
};
