import type { SalonSettings } from '../../journal/salon.ts';
import type { ShelfItem } from '../../journal/shelf.ts';
import type { Exact } from '../../text/exact.ts';
import type { Place } from '../../text/span.ts';
import type { Batch } from './batches.ts';
import type { Unmoved } from './stock-entries.ts';
import type { Touch } from './touch.ts';

/** A count, and what the notes made it before. */
export type Counted = {
  readonly date: string;
  readonly place: Place;
  readonly lot: string | undefined;
  readonly expected: Exact;
  readonly counted: Exact;
  /** Counted, less expected: below nought where something is gone that no note explains. */
  readonly difference: Exact;
  /** Nothing was counted before it, so there is nothing to compare with. */
  readonly first: boolean;
  /** How far off the figure may be by the way it is written. */
  readonly within: Exact;
};

/** What left the shelf for a client, and the batches it came out of by their order. */
export type Used = { readonly touch: Touch; readonly amount: Exact; readonly lots: readonly (string | undefined)[] };

/** One product, or one shade of a range, in one salon. Amounts are exact grams, or pieces. */
export type StockLine = {
  readonly salon: SalonSettings;
  readonly item: ShelfItem;
  readonly shade: string | undefined;
  readonly pieces: boolean;
  /** Whether it was ever counted or came in: else what is on hand is not known. */
  readonly kept: boolean;
  readonly onHand: Exact;
  /** What is on hand, in the order in which it is to be used. */
  readonly batches: readonly Batch[];
  /** Used beyond what the notes say came in. */
  readonly short: Exact;
  readonly counts: readonly Counted[];
  readonly used: readonly Used[];
  readonly cameIn: Exact;
  readonly wentOut: Exact;
  /** All differences of counts after the first, with their signs. */
  readonly unexplained: Exact;
  /** How far off that may be by the way the first and the last count are written: those between cancel out. */
  readonly unexplainedWithin: Exact;
  /** Exact minor units of what clients used: by batch, and at the weighted price. Undefined when a price is missing. */
  readonly issued: { readonly byBatch: Exact | undefined; readonly weighted: Exact | undefined };
  /** The same for what is on hand. */
  readonly value: { readonly byBatch: Exact | undefined; readonly weighted: Exact | undefined };
};

export type Ledger = { readonly lines: readonly StockLine[]; readonly unmoved: readonly Unmoved[] };
