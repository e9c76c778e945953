import type { Journal } from '../journal/journal.ts';
import { currencyDecimals } from '../reckon/currency.ts';
import { UNNAMED } from '../reckon/money/charges.ts';
import { marginOf, type NamedTakings, type TakingsBy } from '../reckon/money/takings.ts';
import { div, exact, exactOf, toFixed } from '../text/exact.ts';
import { type Cell, csvText } from './csv.ts';

/** The columns that name a row. */
const NAMES: Readonly<Record<TakingsBy, readonly string[]>> = {
  visit: ['date', 'client', 'full_name'],
  client: ['client', 'full_name'],
  service: ['service'],
  stylist: ['stylist'],
  month: ['month'],
};

const nameCells = ({ clients }: Journal, by: TakingsBy, name: string): Cell[] => {
  const fullOf = (client: string): string => clients.get(client)?.full ?? client;
  if (by === 'client') return [name, fullOf(name)];
  if (by === 'service' && name === '') return ['nothing charged'];
  if (by === 'service' && name === UNNAMED) return ['no service named'];
  if (by !== 'visit') return [name];
  const [date, client = ''] = name.split(' ');
  return [date, client, fullOf(client)];
};

/** Takings as comma-separated values, money in the currency’s own decimals. What was paid is not known by service. */
export const moneyCsv = (journal: Journal, by: TakingsBy, rows: readonly NamedTakings[]): string =>
  csvText(
    [...NAMES[by], 'times', 'charged', 'discount', 'paid', 'products', 'margin', 'currency', 'visits_without_a_price'],
    rows.map((row) => {
      const places = currencyDecimals(row.currency);
      const money = (minor: number): Cell => toFixed(div(exactOf(minor), exact(10 ** places)), places);
      return [
        ...nameCells(journal, by, row.name),
        row.visits,
        money(row.charged),
        money(row.discount),
        by === 'service' ? undefined : money(row.paid),
        money(row.cost),
        money(marginOf(row)),
        row.currency,
        row.costUnknown,
      ];
    }),
  );
