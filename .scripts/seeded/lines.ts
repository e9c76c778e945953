/** Small changes to the lines of a note, by first word. Every function gives new lines, or undefined where it does not fit. */

export type Lines = readonly string[];

/** The first word of a line, folded. */
export const wordOf = (line: string): string => /^\s*(\S+)/.exec(line)?.[1]?.toLowerCase() ?? '';

/** Whether a line begins with one of some words. */
export const isLineOf =
  (...words: readonly string[]) =>
  (line: string): boolean =>
    words.includes(wordOf(line));

/** The lines without those that a test picks; undefined where it picks none. */
export const without = (lines: Lines, isPicked: (line: string) => boolean): Lines | undefined => {
  const left = lines.filter((line) => !isPicked(line));
  return left.length === lines.length ? undefined : left;
};

/** The lines with the last one that changes put in its new form; undefined where none changes. */
export const changedLast = (lines: Lines, change: (line: string, index: number) => string): Lines | undefined => {
  for (let index = lines.length - 1; index > 0; index -= 1) {
    const line = lines[index] ?? '';
    const next = change(line, index);
    if (next !== line) return lines.with(index, next);
  }
  return undefined;
};

/** As `changedLast`, of the first line that changes. */
export const changedFirst = (lines: Lines, change: (line: string, index: number) => string): Lines | undefined => {
  for (const [index, line] of lines.entries()) {
    const next = index === 0 ? line : change(line, index);
    if (next !== line) return lines.with(index, next);
  }
  return undefined;
};

/** The quoted text of a line, or the comment behind it, which no change touches. */
const typedPart = (line: string): number => {
  const quote = line.search(/["“]| # /);
  return quote < 0 ? line.length : quote;
};

/** A pattern replaced in what a line says, its remark apart. */
export const put = (line: string, pattern: RegExp, by: string | ((...found: string[]) => string)): string => {
  const end = typedPart(line);
  const said = line.slice(0, end);
  return (typeof by === 'string' ? said.replace(pattern, by) : said.replace(pattern, by)) + line.slice(end);
};

/** A time of day some minutes later or earlier, as `9:05`; undefined past midnight. */
export const timeAfter = (hour: number, minute: number, by: number): string | undefined => {
  const at = hour * 60 + minute + by;
  return at < 0 || at >= 24 * 60 ? undefined : `${Math.floor(at / 60)}:${String(at % 60).padStart(2, '0')}`;
};
