import { dayNumber } from '../../text/dates.ts';
import { add, div, type Exact, exact, isZero, min, sign, sub, toNumber, ZERO } from '../../text/exact.ts';
import { compareText, fold } from '../../text/fold.ts';

/** What came in together: one lot at one price. Amounts are exact grams, or pieces. */
export type Batch = {
  /** As typed; undefined where the note names none. */
  readonly lot: string | undefined;
  readonly arrived: string;
  /** The last day it may be used. */
  readonly useBy: string | undefined;
  /** Exact minor units a gram or piece. */
  readonly price: Exact | undefined;
  readonly pack: Exact | undefined;
  readonly left: Exact;
  /** The day on which the pack that is open now was opened, as far as the notes tell. */
  readonly openedOn: string | undefined;
};

/** Batches while movements are worked through. */
export type BatchDraft = { -readonly [key in keyof Batch]: Batch[key] };

/** So much taken out of a batch. */
export type Draw = { readonly batch: BatchDraft; readonly amount: Exact };

/** Whether two lots as typed are the same lot. */
export const isLot = (a: string | undefined, b: string): boolean => a !== undefined && fold(a) === fold(b);

/**
 * The order in which batches are used: first expired, first out. One without a use-by date is taken to last as long after
 * it came in as the dated ones do (`life`, days); with none dated it is first in, first out.
 */
export const firstExpired =
  (life: number) =>
  (a: Batch, b: Batch): number => {
    const end = ({ useBy, arrived }: Batch): number =>
      useBy === undefined ? dayNumber(arrived) + life : dayNumber(useBy);
    return end(a) - end(b) || compareText(a.arrived, b.arrived);
  };

/** The median of days between coming in and the use-by date; nought without any. */
export const lifeOf = (
  batches: readonly { readonly arrived: string; readonly useBy: string | undefined }[],
): number => {
  const lives = batches
    .flatMap(({ arrived, useBy }) => (useBy === undefined ? [] : [dayNumber(useBy) - dayNumber(arrived)]))
    .sort((a, b) => a - b);
  return lives[(lives.length - 1) >> 1] ?? 0;
};

/** Whether an amount is a whole number of packs. */
export const isWholePacks = (amount: Exact, pack: Exact): boolean => Number(div(amount, pack).d) === 1;

const packsTouched = (amount: Exact, pack: Exact): number => Math.ceil(toNumber(div(amount, pack)));

/** The day the open pack was opened, after so much is left of a batch. */
const openedAfter = (batch: BatchDraft, left: Exact, date: string): string | undefined => {
  const { pack } = batch;
  if (pack === undefined || isZero(pack) || isWholePacks(left, pack)) return undefined;
  const fresh = isWholePacks(batch.left, pack) || packsTouched(left, pack) < packsTouched(batch.left, pack);
  return fresh ? date : batch.openedOn;
};

/** Takes an amount out of one batch. */
const takeFrom = (batch: BatchDraft, amount: Exact, date: string): Draw => {
  const left = sub(batch.left, amount);
  batch.openedOn = openedAfter(batch, left, date);
  batch.left = left;
  return { batch, amount };
};

/** Takes an amount out of batches in their order; what they do not hold is `missing`. */
export const draw = (
  batches: readonly BatchDraft[],
  amount: Exact,
  date: string,
): { readonly draws: Draw[]; readonly missing: Exact } => {
  const draws: Draw[] = [];
  let missing = amount;
  for (const batch of batches) {
    if (sign(missing) <= 0) break;
    if (sign(batch.left) <= 0) continue;
    const taken = min(batch.left, missing);
    draws.push(takeFrom(batch, taken, date));
    missing = sub(missing, taken);
  }
  return { draws, missing };
};

/** All that batches hold. */
export const heldIn = (batches: readonly Batch[]): Exact => batches.reduce((whole, { left }) => add(whole, left), ZERO);

/** A part of a millionth of the smallest coin, to which a weighted price is rounded so that its digits do not grow. */
export const PRICE_STEP = exact(1, 1_000_000);
