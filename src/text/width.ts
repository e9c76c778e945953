/** One character as a reader sees it, its first UTF-16 unit in the line, and the columns it fills on a screen. */
export type Cell = { readonly text: string; readonly at: number; readonly width: number };

/** Columns from one tab stop to the next. */
const TAB = 4;

/**
 * A letter with its marks, an emoji with its modifiers and joined parts, a flag: a short form of the clusters of
 * Unicode Standard Annex 29, enough for what is typed in notes.
 */
const CLUSTER = /\t|\p{Regional_Indicator}{2}|[\s\S](?:[\p{M}\p{Emoji_Modifier}]|\u200d\p{Extended_Pictographic})*/gu;

/** What fills two columns: the ranges W and F of Unicode Standard Annex 11, East Asian Width, in whole blocks. */
const WIDE =
  /^[\u1100-\u115f\u2329\u232a\u2e80-\u303e\u3041-\u4dbf\u4e00-\ua4cf\ua960-\ua97c\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe6f\uff01-\uff60\uffe0-\uffe6\u{16fe0}-\u{18cff}\u{1b000}-\u{1b2ff}\u{20000}-\u{3fffd}]/u;
const EMOJI = /^\p{Emoji_Presentation}|\ufe0f/u;
const NO_WIDTH = /^[\p{Cf}\p{M}]/u;

/** Characters that would move the cursor, change the terminal or turn the reading direction. */
const CONTROL = /(?!\t)[\p{Cc}\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/gu;

/** Text of which every character fills one column and does nothing: most of what is ever shown. */
const PLAIN = /^[\x20-\x7e]*$/;

const picture = (control: string): string => {
  const code = control.charCodeAt(0);
  if (code < 0x20) return String.fromCharCode(0x2400 + code);
  return code === 0x7f ? '\u2421' : '\ufffd';
};

/** The text with every control character but the tab replaced by a sign for it, so that no note can steer a terminal. */
export const withoutControls = (text: string): string => (PLAIN.test(text) ? text : text.replace(CONTROL, picture));

/** The same for a text of several lines, whose line ends stand as they are. */
export const linesWithoutControls = (text: string): string =>
  text
    .split('\n')
    .map((line) => (line.endsWith('\r') ? `${withoutControls(line.slice(0, -1))}\r` : withoutControls(line)))
    .join('\n');

const widthOf = (cluster: string): number => {
  const code = cluster.charCodeAt(0);
  if (cluster.length === 1 && code < 0x300) return 1;
  if (NO_WIDTH.test(cluster)) return 0;
  return WIDE.test(cluster) || EMOJI.test(cluster) ? 2 : 1;
};

/** A line cut into what a reader sees as characters; tabs become spaces up to the next stop. */
export const cellsOf = (line: string): Cell[] => {
  const cells: Cell[] = [];
  let column = 0;
  for (const match of line.matchAll(CLUSTER)) {
    const tab = match[0] === '\t' ? TAB - (column % TAB) : 0;
    const text = tab > 0 ? ' '.repeat(tab) : withoutControls(match[0]);
    const width = tab > 0 ? tab : widthOf(text);
    cells.push({ text, at: match.index, width });
    column += width;
  }
  return cells;
};

/** Columns that a text fills on a screen. */
export const displayWidth = (text: string): number =>
  PLAIN.test(text) ? text.length : cellsOf(text).reduce((sum, { width }) => sum + width, 0);
