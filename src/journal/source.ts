import { cutEntries } from '../records/cut.ts';
import type { Notice } from '../records/notice.ts';
import { readEntry } from '../records/read-entry.ts';
import type { Entry } from '../records/schema/entry.ts';
import { type Decoded, decode, linesOf } from '../text/decode.ts';
import { spanOf } from '../text/span.ts';

/**
 * One file of notes as entries.
 *
 * Reads: the bytes of one file. Gives: its lines and its entries, each with the line it starts at.
 * Runs again: when the bytes change.
 */
export type Source = {
  readonly path: string;
  readonly lines: readonly string[];
  readonly bom: boolean;
  readonly encoding: Decoded['encoding'];
  readonly entries: readonly Stood[];
  /** What is wrong with the file as a whole; lines counted from the file's first. */
  readonly notices: readonly Notice[];
};

/** An entry where it stands: the file, its header's line counted from 0, one past its last line. */
export type Stood<E extends Entry = Entry> = {
  readonly file: string;
  readonly line: number;
  readonly end: number;
  readonly entry: E;
  readonly notices: readonly Notice[];
};

const encodingNotice = (decoded: Decoded, lines: readonly string[]): Notice | undefined => {
  if (decoded.encoding === 'utf-8') return undefined;
  const line = Math.max(
    0,
    lines.findIndex((text) => /[^\0-\x7f]/.test(text)),
  );
  const text = lines[line] ?? '';
  const first = Math.max(0, text.search(/[^\0-\x7f]/));
  const name = decoded.encoding === 'windows-1252' ? 'Windows-1252' : decoded.encoding.toUpperCase();
  return {
    rule: 'not-utf-8',
    line,
    at: spanOf(first, first + 1),
    message: `The file is not UTF-8; it is read as ${name}.`,
    todo: 'Save it as UTF-8 in the editor, and look at its accented letters.',
    label: 'first such letter',
  };
};

/** Reads the bytes of one file into its entries. Never throws. */
export const readSource = (path: string, bytes: Uint8Array): Source => {
  const decoded = decode(bytes);
  const lines = linesOf(decoded.text);
  const entries = cutEntries(lines).map((cut): Stood => {
    const { entry, notices } = readEntry(lines.slice(cut.start, cut.end), cut);
    return { file: path, line: cut.start, end: cut.end, entry, notices };
  });
  const notice = encodingNotice(decoded, lines);
  return {
    path,
    lines,
    bom: decoded.bom,
    encoding: decoded.encoding,
    entries,
    notices: notice === undefined ? [] : [notice],
  };
};
