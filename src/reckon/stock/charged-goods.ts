import type { Journal } from '../../journal/journal.ts';
import type { ShelfItem } from '../../journal/shelf.ts';
import { compareText, fold } from '../../text/fold.ts';
import type { Place } from '../../text/span.ts';
import type { VisitReckoned } from '../model.ts';
import type { ShelfRow } from './shelf-state.ts';

/**
 * Goods that were charged by name and that no line takes off the shelf, so that more stands on hand in the notes than on
 * the shelf. A line of the report and no finding: the sale is right, and only the shelf is told too much.
 *
 * Reads: reckoned visits and the shelf as it stands. Gives: one row a charge. Runs again: when one of them changes.
 */
export type ChargedGoods = {
  readonly item: ShelfItem;
  readonly client: string;
  readonly date: string;
  readonly place: Place;
};

/** The goods that an item charged for names: by their short name or their full one, nothing else. */
const goodsOf = ({ shelf }: Journal): ReadonlyMap<string, ShelfItem> => {
  const goods = [...shelf.values()].filter(({ kind }) => kind === 'goods');
  return new Map(goods.flatMap((item) => [[fold(item.full), item] as const, [fold(item.name), item] as const]));
};

/** Charges up to a day for goods that are counted or came in, after their last count, which closes its day; by day. */
export const chargedNotTaken = (
  journal: Journal,
  reckoned: Iterable<VisitReckoned>,
  rows: readonly ShelfRow[],
  on: string,
): ChargedGoods[] => {
  const goods = goodsOf(journal);
  const found: ChargedGoods[] = [];
  if (goods.size === 0) return found;
  for (const { money, uses, date, client, salon } of reckoned) {
    if (date > on) continue;
    for (const { item: typed, amount, place } of money.items) {
      const item = goods.get(fold(typed));
      if (item === undefined || amount <= 0 || uses.some(({ product }) => product === item.name)) continue;
      const row = rows.find(({ line }) => line.item === item && line.salon.name === salon.name);
      if (row?.line.kept !== true || (row.countedOn !== undefined && date <= row.countedOn)) continue;
      found.push({ item, client: client.name, date, place });
    }
  }
  return found.sort((a, b) => compareText(a.date, b.date) || compareText(a.client, b.client));
};
