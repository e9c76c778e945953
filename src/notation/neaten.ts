import { LONGEST_LINE } from '../text/span.ts';
import { type Cut, cutEntries, isConflictEnd, isConflictStart } from './cut.ts';
import { type Gap, neatenFreeStart, neatenGaps, withGaps } from './neaten-line.ts';
import { isBlank, readLine } from './read-line.ts';
import { spaceEnd, textEnd, withoutSpace } from './space.ts';
import { BODY_WORDS, isBodyWord, isHeader } from './words.ts';

/**
 * The neaten layout of notes: white space and nothing else.
 *
 * Reads: the lines of one file. Gives: edits of white space. Headers stand at the margin, the lines under them two
 * spaces in; one space between the things on a line, none before a comma, two before a comment; no two blank lines
 * together. What is typed stays as typed, and so does all inside text, merge conflicts and lines that are not read.
 * Runs again: when the file is to be neatened.
 */
export type NeatenEdit = {
  /** Counted from 0. */
  readonly line: number;
  readonly from: number;
  readonly to: number;
  readonly put: string;
  /** The line is blank and goes, with its ending. */
  readonly gone?: true;
};

/** How a line is laid out; `text`: as typed but for the white space at its end, `block`: as typed. */
type Layout = 'header' | 'body' | 'comment' | 'blank' | 'text' | 'block';

const layoutIn = (cut: Cut | undefined, line: string, index: number): Layout => {
  if (isBlank(line)) return spaceEnd(line) === line.length ? 'blank' : cut?.opens === 'orphan' ? 'text' : 'comment';
  // Half of the longest line: a line may not grow, nor shrink, across the limit of what is read.
  if (line.length > LONGEST_LINE / 2) return 'block';
  if (cut === undefined || cut.opens === 'orphan' || line.includes('\0')) return 'text';
  const { word } = readLine(line);
  if (index === cut.start && isHeader(word)) return 'header';
  return isBodyWord(word) && (BODY_WORDS[word].under as readonly string[]).includes(cut.opens) ? 'body' : 'text';
};

const layoutsOf = (lines: readonly string[]): Layout[] => {
  const cuts = cutEntries(lines);
  let next = 0;
  let conflict = false;
  return lines.map((line, index) => {
    while ((cuts[next]?.end ?? lines.length) <= index) next++;
    const cut = cuts[next];
    const inside = conflict || isConflictStart(line);
    conflict = inside && !(conflict && isConflictEnd(line));
    return inside ? 'block' : layoutIn(cut !== undefined && cut.start <= index ? cut : undefined, line, index);
  });
};

/** The white space to change within one line. */
const gapsOf = (line: string, layout: 'header' | 'body' | 'comment' | 'text'): Gap[] => {
  const end = textEnd(line);
  const tail: Gap[] = end < line.length ? [{ from: end, to: line.length, put: '' }] : [];
  if (layout === 'text') return tail;
  const start = spaceEnd(line);
  const indent = layout === 'body' || (layout === 'comment' && start > 0) ? '  ' : '';
  const head: Gap[] = line.slice(0, start) === indent ? [] : [{ from: 0, to: start, put: indent }];
  if (layout === 'comment') return [...head, ...tail];
  const { form, wordRun } = readLine(line);
  const text = line.slice(0, end);
  const inner = form === undefined ? [] : form === 'free' ? neatenFreeStart(text, wordRun.to) : neatenGaps(text, form);
  return [...head, ...inner, ...tail];
};

/**
 * The edits that make a file's lines (without their endings) neaten, in order.
 * @throws Error when an edit would touch anything but white space: a fault of ours, and nothing may be written.
 */
export const neatenEdits = (lines: readonly string[]): NeatenEdit[] => {
  const layouts = layoutsOf(lines);
  const last = layouts.findLastIndex((layout) => layout !== 'blank');
  // At the start of a file it would be taken for the file's own mark, and the line without it for another one.
  const first = layouts.findIndex((layout) => layout !== 'blank');
  const keepsStart = layouts[first] === 'text' || layouts[first] === 'block';
  const marked = keepsStart && lines[first]?.startsWith('\ufeff') === true;
  const edits: NeatenEdit[] = [];
  for (const [line, layout] of layouts.entries()) {
    const text = lines[line] ?? '';
    if (layout === 'block') continue;
    if (layout === 'blank') {
      const gone = (line === 0 && !marked) || line > last || layouts[line - 1] === 'blank';
      if (gone) edits.push({ line, from: 0, to: text.length, put: '', gone });
      else if (text !== '') edits.push({ line, from: 0, to: text.length, put: '' });
    } else edits.push(...gapsOf(text, layout).map((gap) => ({ line, ...gap })));
  }
  for (const { line, from, to, put } of edits) {
    const typed = lines[line]?.slice(from, to) ?? '';
    if (withoutSpace(typed + put) !== '')
      throw new Error(`neatening line ${line + 1} would change \`${typed}\`; nothing is written`);
  }
  return edits;
};

/**
 * A whole file, neatened. Keeps its byte-order mark and the ending of every line; a last line without an ending gets that
 * of the line above it, unless it stands inside a merge conflict.
 * @throws Error when anything but white space would change.
 */
export const neatenText = (text: string): string => {
  const mark = text.startsWith('\ufeff') ? '\ufeff' : '';
  const rows = (text.slice(mark.length).match(/[^\n]*\n|[^\n]+$/g) ?? []).map((row) => {
    const ending = /\r?\n$|\r$/.exec(row)?.[0] ?? '';
    return { line: row.slice(0, row.length - ending.length), ending };
  });
  const lines = rows.map(({ line }) => line);
  const byLine = new Map<number, NeatenEdit[]>();
  for (const edit of neatenEdits(lines)) {
    const own = byLine.get(edit.line);
    if (own === undefined) byLine.set(edit.line, [edit]);
    else own.push(edit);
  }
  const inBlock = layoutsOf(lines).at(-1) === 'block';
  let out = mark;
  for (const [index, { line, ending }] of rows.entries()) {
    const own = byLine.get(index) ?? [];
    if (own[0]?.gone) continue;
    const needsEnd = !ending.endsWith('\n') && !inBlock;
    out += withGaps(line, own) + (needsEnd ? (ending === '\r' ? '\r\n' : (rows[index - 1]?.ending ?? '\n')) : ending);
  }
  if (withoutSpace(out) !== withoutSpace(text)) throw new Error('neatening would change more than white space');
  return out;
};
