import { readFileSync } from 'node:fs';
import type { Standing } from '../journal/source.ts';
import { readSource, type Source, type Stood } from '../journal/source.ts';
import type { Notice } from '../records/notice.ts';
import { insertLines } from './insert-lines.ts';
import { reasonOf } from './open-journal.ts';
import { changedMeanwhile, refusal } from './refusal.ts';

/** A file with lines put in, not yet written: the bytes before and after, and what reading it anew found. */
export type Added = {
  readonly path: string;
  readonly was: Buffer;
  readonly bytes: Buffer;
  /** The first new line, counted from 0. */
  readonly line: number;
  /** What is wrong with the typing of the new lines; lines counted from the file's first. */
  readonly notices: readonly Notice[];
  /** The entries of the file with the new lines in. */
  readonly entries: readonly Stood[];
};

/** Bytes of a file that is to be changed; empty when there is none yet. */
const bytesOf = (path: string): Buffer => {
  try {
    return readFileSync(path);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return Buffer.alloc(0);
    throw refusal(`\`${path}\` cannot be read: ${reasonOf(error)}.`);
  }
};

/**
 * Puts lines into a file's bytes after line `after`, and reads the whole anew. `source` is the file as the journal was
 * read; a refusal is thrown when it has changed since, and when it is not UTF-8.
 */
export const addLines = (source: Source, after: number, lines: readonly string[]): Added => {
  const { path } = source;
  const was = bytesOf(path);
  const now = readSource(path, was);
  if (now.lines.length !== source.lines.length || now.lines.some((text, index) => text !== source.lines[index]))
    throw changedMeanwhile(path, 'nothing is added');
  if (now.encoding !== 'utf-8')
    throw refusal(`\`${path}\` is not UTF-8, so nothing is added.`, 'Save it as UTF-8 in the editor.');
  const bytes = insertLines(was, after, lines);
  const read = readSource(path, bytes);
  const line = after + 1;
  const end = line + lines.length;
  const notices = read.entries
    .flatMap(({ notices }, index) => {
      const { start } = read.standing[index] as Standing;
      return notices.map((notice) => ({ ...notice, line: start + notice.line }));
    })
    .filter((notice) => notice.line >= line && notice.line < end);
  return { path, was, bytes, line, notices, entries: read.entries };
};
