import type { Journal } from '../journal/journal.ts';
import { pathAndLine } from '../journal/where.ts';
import { currencyDecimals } from '../reckon/currency.ts';
import type { OrderRow } from '../reckon/stock/order.ts';
import type { ShelfRow } from '../reckon/stock/shelf-state.ts';
import type { Touch } from '../reckon/stock/touch.ts';
import type { ClientTouch, LotTrace } from '../reckon/stock/trace.ts';
import { div, type Exact, exact, toFixed } from '../text/exact.ts';
import { type Cell, csvText } from './csv.ts';

/** Grams and pieces to three decimals, money in the currency’s own. */
const figure = (value: Exact | undefined): Cell => value && toFixed(value, 3);

const money = (value: Exact | undefined, currency: string | undefined): Cell => {
  const places = currencyDecimals(currency);
  return value && toFixed(div(value, exact(10 ** places)), places);
};

const wareCells = ({ line }: ShelfRow): Cell[] => [
  line.salon.name,
  line.item.name,
  line.shade,
  line.pieces ? 'pieces' : 'g',
];

const WARE = ['salon', 'product', 'shade', 'unit'];

/** The shelf as comma-separated values: a record a product and shade. */
export const shelfCsv = (rows: readonly ShelfRow[]): string =>
  csvText(
    [
      ...WARE,
      'on_hand',
      'packs',
      'used_recently',
      'days_of_cover',
      'reorder_at',
      'counted_on',
      'first_date_passing',
      'unexplained',
      'unexplained_within',
      'value',
    ],
    rows.map((row) => {
      const { line } = row;
      const dates = row.passing.map(({ last }) => last).sort();
      return [
        ...wareCells(row),
        line.kept ? figure(line.onHand) : undefined,
        line.kept ? figure(row.packs) : undefined,
        figure(row.recent),
        row.cover,
        figure(row.reorderAt),
        row.countedOn,
        dates[0],
        figure(line.unexplained),
        figure(line.unexplainedWithin),
        money(line.value.byBatch, line.salon.currency),
      ];
    }),
  );

/** The order list as comma-separated values. */
export const orderCsv = (rows: readonly OrderRow[]): string =>
  csvText(
    [...WARE, 'packs', 'pack', 'cost', 'on_hand', 'by_pace', 'by_clients', 'reorder_at', 'would_outlive'],
    rows.map(({ row, packs, cost, byPace, byClients, outlives }) => [
      ...wareCells(row),
      packs,
      figure(row.pack),
      money(cost, row.line.salon.currency),
      row.line.kept ? figure(row.usable) : undefined,
      figure(byPace),
      figure(byClients),
      figure(row.reorderAt),
      outlives ? 'yes' : '',
    ]),
  );

const touchCells = (journal: Journal, touch: Touch): Cell[] => [
  touch.date,
  touch.client,
  journal.clients.get(touch.client)?.full ?? touch.client,
  touch.label,
  touch.how,
  touch.bowl,
  figure(touch.amount),
  pathAndLine(journal, touch.place),
];

const TOUCH = ['date', 'client', 'full_name', 'what', 'how', 'bowl', 'amount', 'line'];

/** Where a lot went, as comma-separated values. */
export const lotCsv = (journal: Journal, { traced }: LotTrace): string =>
  csvText(
    [...TOUCH, 'certainty'],
    traced.map(({ touch, certainty }) => [...touchCells(journal, touch), certainty]),
  );

/** What touched a client, as comma-separated values. */
export const clientTraceCsv = (journal: Journal, touches: readonly ClientTouch[]): string =>
  csvText(
    [...TOUCH, 'recorded_lot', 'possible_lots'],
    touches.map(({ touch, recorded, possible }) => [...touchCells(journal, touch), recorded, possible.join(' ')]),
  );
