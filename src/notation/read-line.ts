import { fold } from '../text/fold.ts';
import { LONGEST_LINE } from '../text/span.ts';
import { tokensOf } from './lexer.ts';
import { type LineRule, treeOf } from './line-grammar.ts';
import { EMPTY_TREE, type LineTree, type Run } from './line-tree.ts';
import { type Form, formOf } from './words.ts';

/**
 * One line, read by itself. `word` is its first word, folded ('' for a line that begins with none); `form` is undefined
 * when the word is not of the notation.
 */
export type ReadLine = {
  readonly word: string;
  readonly wordRun: Run;
  readonly form: Form | undefined;
  readonly tree: LineTree;
};

const RULES: Readonly<Record<Exclude<Form, 'free'>, LineRule>> = {
  header: 'line',
  loose: 'line',
  list: 'list',
  mix: 'mix',
  clock: 'clockLine',
};

const BLANK = /^[\s\ufeff\u200b]*$/;
const COMMENT = /^[\s\ufeff\u200b]*#/;
const FIRST_WORD = /^[\s\ufeff\u200b]*(\p{L}[\p{L}\p{M}\p{N}]*(?:[-‐‑–.'’_][\p{L}\p{M}\p{N}]+)*)/u;

/** A list mark as a paste brings it (`• bowl A`, `- bowl A`): white space, where a word of the notation follows. */
const MARKED_WORD =
  /^[\s\ufeff\u200b]*[-*•·‣◦▪–—][\s\u200b]*(\p{L}[\p{L}\p{M}\p{N}]*(?:[-‐‑–.'’_][\p{L}\p{M}\p{N}]+)*)/u;

const firstWord = (line: string): RegExpExecArray | null => {
  const plain = FIRST_WORD.exec(line);
  if (plain !== null) return plain;
  const marked = MARKED_WORD.exec(line);
  return marked !== null && formOf(fold(marked[1] ?? '')) !== undefined ? marked : null;
};

const SPACE = 32;
const TAB = 9;
const HASH = 35;

/** Where a line's first character other than a plain space or tab stands. */
const startOf = (line: string): number => {
  let at = 0;
  for (let code = line.charCodeAt(at); code === SPACE || code === TAB; code = line.charCodeAt(at)) at++;
  return at;
};

/** Whether a line holds nothing, or a comment alone. */
export const isBlank = (line: string): boolean => {
  const code = line.charCodeAt(startOf(line));
  // Most lines begin with a plain letter, and need no pattern.
  if (code > SPACE && code < 128 && code !== HASH) return false;
  return BLANK.test(line) || COMMENT.test(line);
};

/**
 * The first word of a line that begins, after plain white space, with letters a to z in small type and a space after
 * them: what nearly every line does. Undefined for any other line, whose first word `readLine` tells.
 */
export const plainWord = (line: string): string | undefined => {
  const from = startOf(line);
  let to = from;
  for (let code = line.charCodeAt(to); code >= 97 && code <= 122; code = line.charCodeAt(to)) to++;
  return to > from && line.charCodeAt(to) === SPACE ? line.slice(from, to) : undefined;
};

/** Most lines kept in the table; with more distinct lines than this it starts anew. */
const TABLE_LIMIT = 20_000;
const table = new Map<string, ReadLine>();

/** Reads one line without looking it up: what `readLine` gives, at full cost. */
export const readFresh = (line: string): ReadLine => {
  const plain = plainWord(line);
  const match = plain === undefined ? firstWord(line) : null;
  const typed = plain ?? match?.[1] ?? '';
  const to = plain === undefined ? (match?.[0].length ?? 0) : startOf(line) + plain.length;
  const wordRun = { from: to - typed.length, to };
  const word = fold(typed);
  const form = formOf(word);
  if (line.length > LONGEST_LINE) return { word, wordRun, form: undefined, tree: EMPTY_TREE };
  if (form === 'free') return { word, wordRun, form, tree: EMPTY_TREE };
  const tokens = tokensOf(line);
  // The first token, after any list mark, is the first word: both are cut by the same pattern.
  if (typed !== '') while ((tokens[0]?.startOffset ?? to) < to) tokens.shift();
  return { word, wordRun, form, tree: treeOf(tokens, form === undefined ? 'line' : RULES[form]) };
};

const FREE_START = /^[\s\ufeff\u200b]*(?:[-*•·‣◦▪–—][\s\u200b]*)?(?:aim|note|care|caution|photo)(?![\p{L}\p{N}])/iu;

const isFree = (line: string): boolean => {
  const plain = plainWord(line);
  return plain === undefined ? FREE_START.test(line) : formOf(plain) === 'free';
};

/**
 * Reads one line. Lines that differ only in their digits share one tree, since no token asks for a particular digit;
 * free text never enters the table.
 */
export const readLine = (line: string): ReadLine => {
  if (line.length > 400 || isFree(line)) return readFresh(line);
  const key = line.replace(/\d/g, '0');
  let found = table.get(key);
  if (found === undefined) {
    found = readFresh(line);
    if (table.size >= TABLE_LIMIT) table.clear();
    table.set(key, found);
  }
  // A word of the notation has no digits; any other is this line's own.
  return found.form === undefined ? { ...found, word: fold(line.slice(found.wordRun.from, found.wordRun.to)) } : found;
};
