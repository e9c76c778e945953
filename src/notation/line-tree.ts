/**
 * The tree of one line: kinds and places, no values and no text, so that lines which differ only in their digits share
 * one. Whoever needs a value cuts it out of the line itself.
 */

/** A run of characters of the line, from `from` up to, not including, `to`. */
export type Run = { readonly from: number; readonly to: number };

export type ItemKind =
  | 'number' // with whatever belongs to it: hedge, range, per cent, unit
  | 'clock' // a time, a span of time or a relative time, where the line's form expects one
  | 'pair' // 1:1.5 or 14:35, and its range
  | 'slashed' // 7/43
  | 'chain' // 4.9.2026
  | 'date'
  | 'month'
  | 'count' // x6
  | 'word'
  | 'text' // quoted
  | 'open' // a quotation without an end
  | 'plus'
  | 'dash'
  | 'comma'
  | 'slash'
  | 'equal'
  | 'stop'
  | 'unknown';

export type Item = Run & {
  readonly kind: ItemKind;
  /** No white space before it. */
  readonly glued: boolean;
  /** number, clock, pair: the first figure; a hedged word: the word alone. */
  readonly first?: Run;
  /** number, clock, pair: the far end of a range. */
  readonly second?: Run;
  /** number: its unit; clock, pair: `am` or `pm` after the first figure. */
  readonly unit?: Run;
  /** clock, pair: `am` or `pm` after the second figure. */
  readonly secondUnit?: Run;
  readonly percent?: boolean;
  /** Hedged with ~ or ?. */
  readonly about?: boolean;
  /** clock: minutes after the first `on`. */
  readonly relative?: boolean;
};

/** One line as the grammar reads it: its groups of items, in order, and the comment. */
export type LineTree = {
  readonly groups: readonly (readonly Item[])[];
  readonly comment: Run | undefined;
};

export const EMPTY_TREE: LineTree = { groups: [], comment: undefined };
