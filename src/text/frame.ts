import { type At, fromOf, toOf } from './span.ts';
import { type Cell, cellsOf } from './width.ts';

/**
 * A line of the notes as it is shown beside a finding: in three pieces, so that the middle one can be painted, and the
 * carets that stand under the middle one. A long line is cut to what stands round the span.
 */
export type Frame = {
  readonly before: string;
  readonly marked: string;
  readonly after: string;
  /** Columns before the first caret, and how many carets. */
  readonly indent: number;
  readonly carets: number;
};

/** Columns that a shown line fills at most. */
export const FRAME_WIDTH = 96;

const CUT = '…';

const widthOf = (cells: readonly Cell[]): number => cells.reduce((sum, { width }) => sum + width, 0);
const textOf = (cells: readonly Cell[]): string => cells.map(({ text }) => text).join('');

/** The cells from the start of the list that fill at most `room` columns. */
const fitting = (cells: readonly Cell[], room: number): readonly Cell[] => {
  let width = 0;
  const over = cells.findIndex((cell) => {
    width += cell.width;
    return width > room;
  });
  return over < 0 ? cells : cells.slice(0, over);
};

/** The cells at the end of the list that fill at most `room` columns. */
const fittingLast = (cells: readonly Cell[], room: number): readonly Cell[] =>
  fitting(cells.toReversed(), room).toReversed();

/**
 * Frames the run `at` of a line in at most `width` columns. A character that the run only touches is marked whole; an
 * empty run has one caret, also one past the line's end.
 */
export const frameOf = (line: string, at: At, width = FRAME_WIDTH): Frame => {
  const cells = cellsOf(line.trimEnd().length < toOf(at) ? line : line.trimEnd());
  const [from, to] = [fromOf(at), Math.max(toOf(at), fromOf(at) + 1)];
  const first = cells.findIndex((_, index) => (cells[index + 1]?.at ?? line.length) > from);
  const start = first < 0 ? cells.length : first;
  const past = cells.findIndex((cell) => cell.at >= to);
  const end = past < 0 ? cells.length : Math.max(past, start);
  const [before, marked, after] = [cells.slice(0, start), cells.slice(start, end), cells.slice(end)];
  if (widthOf(cells) <= width) return drawn('', before, marked, after, '');

  // The marked run comes first; what room it leaves is shared between both sides, the near side of a short end lends.
  const shown = fitting(marked, width - 2);
  const room = width - 2 - widthOf(shown);
  const afterWidth = Math.min(widthOf(after), Math.max(Math.floor(room / 2), room - widthOf(before)));
  const left = fittingLast(before, room - afterWidth);
  const right = shown.length < marked.length ? [] : fitting(after, afterWidth);
  const cutLeft = left.length < before.length ? CUT : '';
  const cutRight = shown.length + right.length < marked.length + after.length ? CUT : '';
  return drawn(cutLeft, left, shown, right, cutRight);
};

const drawn = (
  cutLeft: string,
  before: readonly Cell[],
  marked: readonly Cell[],
  after: readonly Cell[],
  cutRight: string,
): Frame => ({
  before: cutLeft + textOf(before),
  marked: textOf(marked),
  after: textOf(after) + cutRight,
  indent: cutLeft.length + widthOf(before),
  carets: Math.max(1, widthOf(marked)),
});
