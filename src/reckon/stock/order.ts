import type { ShelfItem } from '../../journal/shelf.ts';
import { daysBetween } from '../../text/dates.ts';
import { add, compare, div, type Exact, exact, max, mul, sign, sub, toNumber, ZERO } from '../../text/exact.ts';
import type { Expected } from './expected.ts';
import type { ShelfRow } from './shelf-state.ts';
import { priceOn } from './stock-entries.ts';

/** What to buy of a product or shade. Amounts are exact grams, or pieces. */
export type OrderRow = {
  readonly row: ShelfRow;
  /** What the time ahead takes at the recent pace, and what the clients awaited are likely to take. */
  readonly byPace: Exact;
  readonly byClients: Exact;
  readonly need: Exact;
  /**
   * A pack would be past its time after opening before it is used up: it is named and not bought. Never where the notes
   * are too young for a pace.
   */
  readonly outlives: boolean;
  /** Whole packs; nought where it would outlive its time. Undefined where no pack is on the shelf. */
  readonly packs: number | undefined;
  /** Exact minor units at the price in force on the day. */
  readonly cost: Exact | undefined;
};

const keyOf = (salon: string | undefined, item: ShelfItem, shade: string | undefined): string =>
  `${salon ?? ''}\n${item.name}\n${shade ?? ''}`;

const takenBy = (expected: readonly Expected[]): Map<string, Exact> => {
  const taken = new Map<string, Exact>();
  for (const { takes, times } of expected)
    for (const { item, shade, amount, salon } of takes) {
      if (item === undefined || amount === undefined) continue;
      const key = keyOf(salon, item, shade);
      taken.set(key, add(taken.get(key) ?? ZERO, mul(amount, exact(times))));
    }
  return taken;
};

/**
 * What to buy in whole packs. The need is the larger of two: the recent pace, and what the clients awaited are likely
 * to take, for those clients are part of the pace. It is to leave the reorder level on the shelf at the end. `paced` is
 * false where the notes are too young for a pace: then the clients awaited alone count. What would outlive its `keeps` line
 * is named and not bought.
 */
export const orderRows = (
  rows: readonly ShelfRow[],
  expected: readonly Expected[],
  on: string,
  until: string,
  paced = true,
): OrderRow[] => {
  const taken = takenBy(expected);
  const days = exact(daysBetween(on, until));
  return rows.flatMap((row): OrderRow[] => {
    const { line, perDay, pack, usable, reorderAt, dormant } = row;
    const byPace = paced ? mul(perDay, days) : ZERO;
    const byClients = taken.get(keyOf(line.salon.name, line.item, line.shade)) ?? ZERO;
    const need = max(byPace, byClients);
    // What nobody has used for long is not bought for its level alone.
    const level = dormant && sign(need) === 0 ? ZERO : (reorderAt ?? ZERO);
    const onHand = line.kept ? max(usable, ZERO) : ZERO;
    const missing = sub(add(need, level), onHand);
    if (compare(missing, ZERO) <= 0 || !(line.kept || sign(need) > 0)) return [];
    const soon = row.inKeeps && max(row.inKeeps, byClients);
    const outlives = paced && soon !== undefined && pack !== undefined && compare(soon, pack) < 0;
    const wanted = pack && sign(pack) > 0 ? Math.ceil(toNumber(div(missing, pack))) : undefined;
    const packs = outlives ? 0 : wanted;
    const price = priceOn(line.item, on, line.salon);
    const cost = packs !== undefined && price && pack ? mul(price, mul(pack, exact(packs))) : undefined;
    return [{ row, byPace, byClients, need, outlives, packs, cost }];
  });
};
