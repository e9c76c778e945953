import type { Journal } from '../journal/journal.ts';
import { pathAndLine } from '../journal/where.ts';
import type { OrderRow } from '../reckon/stock/order.ts';
import type { ShelfRow } from '../reckon/stock/shelf-state.ts';
import type { Touch } from '../reckon/stock/touch.ts';

/** A line of the shelf as plain data, without the records it was worked out from. */
export const shelfRowJson = (journal: Journal, row: ShelfRow): object => {
  const { line } = row;
  const { batches, counts, onHand, short, cameIn, wentOut, unexplained, unexplainedWithin, value, issued } = line;
  return {
    salon: line.salon.name,
    product: line.item.name,
    shade: line.shade,
    unit: line.pieces ? 'pieces' : 'g',
    ...(line.kept && { onHand, packs: row.packs }),
    usable: row.usable,
    short,
    cameIn,
    wentOut,
    usedRecently: row.recent,
    daysOfCover: row.cover,
    reorderAt: row.reorderAt,
    below: row.below,
    passing: row.passing.map(({ batch, by, last, passed }) => ({ lot: batch.lot, left: batch.left, by, last, passed })),
    batches,
    counts: counts.map(({ place, ...counted }) => ({ ...counted, line: pathAndLine(journal, place) })),
    unexplained,
    unexplainedWithin,
    value,
    issued,
  };
};

/** A line of the order as plain data. */
export const orderRowJson = ({ row, packs, cost, byPace, byClients, need, outlives }: OrderRow): object => ({
  salon: row.line.salon.name,
  product: row.line.item.name,
  shade: row.line.shade,
  unit: row.line.pieces ? 'pieces' : 'g',
  packs,
  pack: row.pack,
  cost,
  ...(row.line.kept && { usable: row.usable }),
  byPace,
  byClients,
  need,
  ...(outlives && { outlives, inKeeps: row.inKeeps }),
});

/** A touch as plain data. */
export const touchJson = (
  journal: Journal,
  { client, date, how, bowl, label, shade, lot, amount, place }: Touch,
): object => ({
  client,
  date,
  what: label,
  how,
  bowl,
  shade,
  lot,
  amount,
  line: pathAndLine(journal, place),
});
