import { readSource, type Source } from '../../journal/source.ts';
import { decode } from '../../text/decode.ts';
import { fold } from '../../text/fold.ts';

/**
 * Files of notes cut at their headers, before anything is read.
 *
 * Reads: the bytes of a file. Gives: its text from header to header. Runs again: when the file changes.
 */
export type NoteFile = { readonly path: string; readonly bytes: Uint8Array };

/** From one header to the next; `line` is where it begins, counted from 0. */
export type Chunk = { readonly kind: string; readonly text: string; readonly line: number };

export type CutFile = { readonly path: string; readonly whole: boolean; readonly chunks: readonly Chunk[] };

/** White space, and a list mark as a paste brings it: what may stand before a line’s first word. */
export const INDENT = '(?:[^\\S\\n]|\\u200b)*(?:[-*•·‣◦▪–—](?:[^\\S\\n]|\\u200b)*)?';

/** Nothing that goes on a word stands here. */
export const WORD_END = "(?![\\p{L}\\p{N}_.'’‐‑–-])";

const HEADER = new RegExp(`${INDENT}(salon|stylist|range|product|stock|client|visit)${WORD_END}`, 'iuy');

/** How the headers begin: a line whose first word plainly begins otherwise is none, and most lines are such. */
const BEGINNINGS: ReadonlySet<number> = new Set(
  ['sa', 'st', 'ra', 'pr', 'cl', 'vi'].map((two) => two.charCodeAt(0) * 128 + two.charCodeAt(1)),
);

const SPACE = 32;
const TAB = 9;
const FEED = 10;
const isSmall = (code: number): boolean => code >= 97 && code <= 122;

/** The header word of the line that begins here, in small letters; undefined where there is none. */
const headerAt = (text: string, begin: number): string | undefined => {
  let from = begin;
  for (let code = text.charCodeAt(from); code === SPACE || code === TAB; code = text.charCodeAt(from)) from++;
  const [first, second] = [text.charCodeAt(from), text.charCodeAt(from + 1)];
  if (first === FEED || (isSmall(first) && isSmall(second) && !BEGINNINGS.has(first * 128 + second))) return undefined;
  HEADER.lastIndex = begin;
  return HEADER.exec(text)?.[1]?.toLowerCase();
};

/** Cuts a file at its headers; one with merge markers, which change what lines mean, is for the reader to cut. */
export const cutFile = ({ path, bytes }: NoteFile): CutFile => {
  const { text } = decode(bytes);
  const chunks: Chunk[] = [];
  let open = { kind: '', start: 0, line: 0 };
  let line = 0;
  for (let begin = 0; begin >= 0 && begin < text.length; line++) {
    if (text.startsWith('<<<<<<<', begin)) return { path, whole: true, chunks: [{ kind: '', text, line: 0 }] };
    const kind = headerAt(text, begin);
    if (kind !== undefined) {
      if (begin > open.start) chunks.push({ kind: open.kind, text: text.slice(open.start, begin), line: open.line });
      open = { kind, start: begin, line };
    }
    const end = text.indexOf('\n', begin);
    begin = end < 0 ? -1 : end + 1;
  }
  chunks.push({ kind: open.kind, text: text.slice(open.start), line: open.line });
  return { path, whole: false, chunks };
};

/** Line feeds in a text. */
const feedsIn = (text: string): number => {
  let feeds = 0;
  for (let at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1)) feeds++;
  return feeds;
};

/** What is to be read of a chunk; undefined for nothing. */
export type Reads = (chunk: Chunk) => string | undefined;

/** The part of a file that is to be read, its lines where they were; undefined where that is nothing. */
export const partOf = ({ path, whole, chunks }: CutFile, reads: Reads): Source | undefined => {
  if (whole) return readSource(path, Buffer.from(chunks.map(({ text }) => text).join('')));
  const parts: string[] = [];
  let at = 0;
  for (const chunk of chunks) {
    const text = reads(chunk);
    if (text === undefined) continue;
    parts.push('\n'.repeat(chunk.line - at), text);
    at = chunk.line + feedsIn(text);
  }
  return parts.length === 0 ? undefined : readSource(path, Buffer.from(parts.join('')));
};

/** A chunk’s header. */
export const headOf = (text: string): string => {
  const end = text.indexOf('\n');
  return end < 0 ? text : text.slice(0, end);
};

const NAMES = /\p{L}[\p{L}\p{M}\p{N}'’‐‑–_.-]*/gu;

/** Words and names as typed. */
export const namesIn = (text: string): string[] => text.match(NAMES) ?? [];

/** The client in a header of a client or a visit: the first name that is nobody’s hand and no salon’s. */
export const clientIn = (head: string): string => {
  const [, ...names] = namesIn(head).map(fold);
  const isOther = (name: string | undefined): boolean => name === 'by' || name === 'at';
  return names.find((name, index) => !isOther(name) && !isOther(names[index - 1])) ?? '';
};

/** Figures that stand like a date’s, with whatever is typed between them. */
const DATES = /\d{4}[^\d\s:]\d{1,2}[^\d\s:]\d{1,2}/gu;

/** What is typed like a date, in order. */
export const datesIn = (text: string): string[] => text.match(DATES) ?? [];

const PLAIN_DATE = /^\d{4}-\d{2}-\d{2}$/;

const PLAIN_HEAD = /^visit (\d{4}-\d{2}-\d{2})(?!\d)/;

/** The first thing in a visit’s header that is typed like a date; nothing where there is none. */
export const dayIn = (text: string): string => PLAIN_HEAD.exec(text)?.[1] ?? datesIn(headOf(text))[0] ?? '';

/** Whether what is typed like a date is plainly one before another. */
export const isBefore = (typed: string, date: string): boolean => PLAIN_DATE.test(typed) && typed < date;
