import type { ShelfItem } from '../../journal/shelf.ts';
import { addDays, daysBetween } from '../../text/dates.ts';
import { compare, div, type Exact, exact, mul, sign, sub, sum, toNumber, ZERO } from '../../text/exact.ts';
import { compareText } from '../../text/fold.ts';
import { dayAfter } from '../when.ts';
import type { Batch } from './batches.ts';
import type { Ledger, StockLine } from './ledger.ts';
import { inPackOn, stockWeight } from './stock-entries.ts';

/** Days that the recent pace is taken from: eight weeks. A choice, no source. */
export const PACE_DAYS = 56;

/** Days of notes that a pace needs before anything is ordered by it: four weeks. A choice, no source. */
export const PACE_LEAST_DAYS = 28;

/** Days ahead in which a date is said to be about to pass: eight weeks. A choice, no source. */
export const AHEAD_DAYS = 56;

/** Days without use after which a product or shade is dormant: half a year. A choice, no source. */
const DORMANT_DAYS = 182;

/** A batch whose date has passed or soon will. */
export type Passing = {
  readonly batch: Batch;
  readonly by: 'use-by' | 'opened';
  /** The last day. */
  readonly last: string;
  readonly passed: boolean;
};

/** A line of the shelf as it stands on a day. */
export type ShelfRow = {
  readonly line: StockLine;
  /** Grams or pieces in a pack. */
  readonly pack: Exact | undefined;
  readonly packs: Exact | undefined;
  /** What the last eight weeks used, and what that is a day. */
  readonly recent: Exact;
  readonly perDay: Exact;
  /** Whole days that it lasts at that pace; undefined when nothing was used lately, or what is on hand is not known. */
  readonly cover: number | undefined;
  /**
   * What is used while an opened pack keeps, at the pace of as long a time before, as far as the notes go; undefined for
   * what has no `keeps` line.
   */
  readonly inKeeps: Exact | undefined;
  readonly reorderAt: Exact | undefined;
  readonly below: boolean;
  /** Not used for half a year. */
  readonly dormant: boolean;
  readonly passing: readonly Passing[];
  /** On hand, less what is past its use-by date. */
  readonly usable: Exact;
  readonly countedOn: string | undefined;
  readonly lastUsed: string | undefined;
};

/** A product or shade as pages name it. */
export const wareName = ({ item, shade }: Pick<StockLine, 'item' | 'shade'>): string =>
  shade === undefined ? item.name : `${item.name} ${shade}`;

const passingOf = ({ item, batches }: StockLine, on: string): Passing[] => {
  const soon = addDays(on, AHEAD_DAYS);
  return batches.flatMap((batch): Passing[] => {
    const dates: Passing[] = [];
    const { useBy, openedOn } = batch;
    if (useBy !== undefined && useBy <= soon) dates.push({ batch, by: 'use-by', last: useBy, passed: useBy < on });
    if (openedOn !== undefined && item.keeps !== undefined) {
      const last = dayAfter(openedOn, item.keeps.keeps);
      if (last <= soon) dates.push({ batch, by: 'opened', last, passed: last < on });
    }
    return dates;
  });
};

/** Days from the day on for which an opened pack keeps. */
const keepsDays = ({ keeps }: ShelfItem, on: string): number | undefined =>
  keeps && daysBetween(on, dayAfter(on, keeps.keeps));

const usedInKeeps = ({ item, used }: StockLine, on: string, since: string): Exact | undefined => {
  const kept = keepsDays(item, on);
  if (kept === undefined || kept <= 0) return undefined;
  const days = Math.max(1, Math.min(kept, daysBetween(since, on) + 1));
  const from = addDays(on, 1 - days);
  const whole = sum(used.flatMap(({ touch, amount }) => (touch.date >= from ? [amount] : [])));
  return mul(whole, exact(kept, days));
};

const rowOf = (line: StockLine, on: string, since: string): ShelfRow => {
  const { item, salon, onHand, kept, used, batches } = line;
  const pack = inPackOn(item, on, salon);
  const days = Math.max(1, Math.min(PACE_DAYS, daysBetween(since, on) + 1));
  const from = addDays(on, 1 - days);
  const recent = sum(used.flatMap(({ touch, amount }) => (touch.date >= from ? [amount] : [])));
  const perDay = div(recent, exact(days));
  const reorderAt = item.reorder && stockWeight(item, item.reorder.at, on, salon)?.amount;
  const passed = batches.flatMap(({ useBy, left }) => (useBy !== undefined && useBy < on ? [left] : []));
  const lastUsed = used.at(-1)?.touch.date;
  return {
    line,
    pack,
    packs: pack && div(onHand, pack),
    recent,
    perDay,
    cover: kept && sign(perDay) > 0 ? Math.max(0, Math.floor(toNumber(div(onHand, perDay)))) : undefined,
    inKeeps: usedInKeeps(line, on, since),
    reorderAt,
    below: kept && reorderAt !== undefined && compare(onHand, reorderAt) <= 0,
    dormant: lastUsed === undefined || daysBetween(lastUsed, on) > DORMANT_DAYS,
    passing: passingOf(line, on),
    usable: sub(onHand, sum(passed)),
    countedOn: line.counts.at(-1)?.date,
    lastUsed,
  };
};

const firstDay = ({ lines }: Ledger, on: string): string =>
  lines
    .flatMap(({ used, counts }) => [used[0]?.touch.date ?? on, counts[0]?.date ?? on])
    .reduce((first, date) => (compareText(date, first) < 0 ? date : first), on);

/** Days of notes on the shelf up to a day, the first and the last counted. */
export const daysNoted = (ledger: Ledger, on: string): number => daysBetween(firstDay(ledger, on), on) + 1;

/** The shelf as it stands at the end of a day. The ledger holds nothing after that day. */
export const shelfState = (ledger: Ledger, on: string): ShelfRow[] => {
  const since = firstDay(ledger, on);
  return ledger.lines.map((line) => rowOf(line, on, since));
};

/** What all rows are worth by batch, exact minor units; what has no price counts as nothing and is named. */
export const shelfValue = (
  rows: readonly ShelfRow[],
): { readonly value: Exact; readonly unpriced: readonly string[] } => {
  const kept = rows.filter(({ line }) => line.kept);
  return {
    value: kept.reduce((whole, { line }) => sum([whole, line.value.byBatch ?? ZERO]), ZERO),
    unpriced: [...new Set(kept.flatMap(({ line }) => (line.value.byBatch === undefined ? [line.item.name] : [])))],
  };
};
