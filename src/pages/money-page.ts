import type { Journal } from '../journal/journal.ts';
import { currencyDecimals } from '../reckon/currency.ts';
import type { VisitReckoned } from '../reckon/model.ts';
import { UNNAMED } from '../reckon/money/charges.ts';
import type { DepositHeld } from '../reckon/money/deposits.ts';
import {
  marginOf,
  type NamedTakings,
  type Takings,
  type TakingsBy,
  takings,
  takingsBy,
} from '../reckon/money/takings.ts';
import { perCent } from '../reckon/say.ts';
import { monthsFrom } from '../reckon/use/months.ts';
import { isWithin } from '../reckon/use/period.ts';
import { exact, ONE, roundTo } from '../text/exact.ts';
import { dayText } from './days.ts';
import { escapeText } from './escape.ts';
import { type MonthBar, monthBars } from './figures/month-bars.ts';
import { noFigures, type Sheet } from './figures/sheet.ts';
import { minorFigure, minorText } from './money-words.ts';
import { clientName, joined, stylistName } from './noted.ts';
import { type Column, table } from './tables.ts';
import type { UsagePeriod } from './usage-page.ts';

/** `by`: one grouping alone instead of the whole report. */
export type MoneyOptions = { readonly by?: TakingsBy; readonly sheet?: Sheet };

const HEADS: Readonly<Record<TakingsBy, string>> = {
  visit: 'Visit',
  client: 'Client',
  service: 'Service',
  stylist: 'Stylist',
  month: 'Month',
};

/** What a margin is and what it is not. */
const MEANING =
  'Charged is the items less their discounts. The margin is that less the products mixed, what was left over too, at the prices of the day; costs are rounded visit by visit, so columns add up. Hours and rent are not in it. Tax is not worked out: this is no tax advice.';

const SHARED =
  'The products of a visit are shared over its items by price, for the notes do not say which service a bowl was mixed for. A cut or a blow-dry bears none beside other work; goods sold by the piece bear their own cost.';

const figuresColumns = (...heads: string[]): Column[] => heads.map((head) => ({ head, figures: true }));

/** The margin as a share of what was charged; nothing where nothing was. */
const shareText = ({ charged, cost }: Takings): string =>
  charged <= 0 ? '' : perCent(roundTo(exact(100 * marginOf({ charged, cost }), charged), ONE));

const nameOf = (journal: Journal, by: TakingsBy, { name }: NamedTakings): string => {
  if (name === '') return by === 'stylist' ? 'no stylist noted' : 'nothing charged';
  if (by === 'service' && name === UNNAMED) return 'no service named';
  if (by === 'stylist') return stylistName(journal, { name });
  if (by === 'client') return clientName(journal, { name });
  const [date = '', client = ''] = name.split(' ');
  return by === 'visit' ? `${date} ${clientName(journal, { name: client })}` : escapeText(name);
};

const cellsOf = (name: string, row: Takings, by: TakingsBy): string[] => {
  const sum = (value: number): string => minorFigure(value, row.currency);
  return [
    row.costUnknown > 0 ? `${name} \\*` : name,
    ...(by === 'visit' ? [] : [`${row.visits}`]),
    sum(row.charged),
    sum(row.discount),
    sum(row.cost),
    sum(marginOf(row)),
    shareText(row),
  ];
};

const takingsTable = (journal: Journal, by: TakingsBy, rows: readonly NamedTakings[], all: Takings): string => {
  const cells = rows.map((row) => cellsOf(nameOf(journal, by, row), row, by));
  const count = rows.reduce((whole, { visits }) => whole + visits, 0);
  const [first = '', ...rest] = cellsOf('In all', { ...all, visits: by === 'service' ? count : all.visits }, by);
  if (rows.length > 1) cells.push([`**${first}**`, ...rest.map((cell) => cell && `**${cell}**`)]);
  const columns = figuresColumns(
    ...(by === 'visit' ? [] : [by === 'service' ? 'Times' : 'Visits']),
    'Charged',
    'Discount',
    'Products',
    'Margin',
    'of charged',
  );
  return table([{ head: HEADS[by] }, ...columns], cells);
};

/** The months from the first to the last visit as bars: the products, and the margin on top. */
const barsOf = (rows: readonly NamedTakings[], currency: string | undefined): MonthBar[] => {
  const found = new Map(rows.map((row) => [row.name, row]));
  const minors = 10 ** currencyDecimals(currency);
  return monthsFrom(rows[0]?.name ?? '', rows.at(-1)?.name ?? '').map((month) => {
    const { charged, cost } = found.get(month) ?? { charged: 0, cost: 0 };
    const margin = marginOf({ charged, cost });
    return {
      month,
      lower: Math.max(0, cost) / minors,
      upper: Math.max(0, margin) / minors,
      says: `${month}: ${minorText(charged, currency)} charged, products ${minorText(cost, currency)}, margin ${minorText(margin, currency)}`,
    };
  });
};

const figureBlocks = (sheet: Sheet, rows: readonly NamedTakings[], currency: string | undefined): string[] =>
  sheet([
    (id) =>
      monthBars(
        id,
        { title: 'Charged, by month', unit: currency ?? '', lower: 'products', upper: 'margin' },
        barsOf(rows, currency),
      ),
  ]);

const summary = (all: Takings, held: readonly DepositHeld[], to: string): string => {
  const sum = (value: number): string => minorText(value, all.currency);
  const deposits = held.reduce((whole, { amount }) => whole + amount, 0);
  const margin = marginOf(all);
  const share = shareText(all);
  return joined(
    [
      `- **Charged** ${sum(all.charged)}${all.discount === 0 ? '' : `, after ${sum(all.discount)} of discounts`}`,
      `- **Products** ${sum(all.cost)}`,
      `- **Margin** ${sum(margin)}${share === '' ? '' : `, ${share} of what was charged`}; ${minorText(roundTo(exact(margin, all.visits), ONE), all.currency)} a visit`,
      `- **Received** ${sum(all.paid)}: what was paid, with deposits taken and less those given back`,
      deposits > 0 && `- **Deposits held** ${sum(deposits)} at the end of ${to}`,
      all.costUnknown > 0 &&
        `- **No cost** for something used at ${all.costUnknown} of the ${all.visits} visits, marked \\*, without a price or a weight: their margin is less than it looks`,
    ],
    '\n',
  );
};

const depositsTable = (journal: Journal, held: readonly DepositHeld[]): string =>
  table(
    [{ head: 'Client' }, { head: 'Taken' }, { head: 'For' }, { head: 'Held', figures: true }],
    held.map(({ client, taken, for: day, amount, currency }) => [
      clientName(journal, client),
      taken,
      day ?? 'no day noted',
      minorFigure(amount, currency),
    ]),
  );

const DEFAULT_BY: readonly TakingsBy[] = ['month', 'service', 'stylist', 'client'];

/** The report of one currency; its headings name the currency where there are several. */
const currencyBlocks = (
  journal: Journal,
  visits: readonly VisitReckoned[],
  all: Takings,
  held: readonly DepositHeld[],
  {
    period,
    by,
    sheet,
    several,
  }: Required<Pick<MoneyOptions, 'sheet'>> & {
    readonly by: TakingsBy | undefined;
    readonly period: UsagePeriod;
    readonly several: boolean;
  },
): string[] => {
  const suffix = several ? ` (${all.currency === undefined ? 'no currency noted' : escapeText(all.currency)})` : '';
  const section = (one: TakingsBy): string[] => {
    const rows = takingsBy(visits, period, one).filter(({ currency }) => currency === all.currency);
    if (rows.length === 0 || (one === 'month' && by === undefined && rows.length < 2)) return [];
    return [
      `## By ${HEADS[one].toLowerCase()}${suffix}`,
      ...(one === 'month' ? figureBlocks(sheet, rows, all.currency) : []),
      ...(one === 'service' ? [SHARED] : []),
      takingsTable(journal, one, rows, all),
    ];
  };
  const deposits = by === undefined && held.length > 0;
  return [
    ...(several ? [`## In all${suffix}`] : []),
    summary(all, held, period.to),
    ...(several ? [] : [MEANING]),
    ...(by === undefined ? DEFAULT_BY : [by]).flatMap(section),
    ...(deposits ? [`## Deposits held${suffix}`, depositsTable(journal, held)] : []),
  ];
};

/**
 * The money of a period as Markdown: charged, products, margin, by month, service, stylist and client or by one thing
 * alone, and the deposits held at its end. `held` is of the whole journal up to then. Whole minor units throughout.
 */
export const moneyMarkdown = (
  journal: Journal,
  reckoned: Iterable<VisitReckoned>,
  held: readonly DepositHeld[],
  period: UsagePeriod,
  { by, sheet = noFigures }: MoneyOptions = {},
): string => {
  const visits = [...reckoned].filter(({ date }) => isWithin(date, period));
  const totals = takings(visits, period);
  const several = totals.length > 1;
  const count = `${visits.length} ${visits.length === 1 ? 'visit' : 'visits'}`;
  const { full } = journal.salon;
  const blocks = [
    '# Money',
    joined([`${dayText(period.from)}, to ${dayText(period.to)}`, count, full && escapeText(full)], ' · '),
    ...(totals.length === 0 ? ['The notes show no visit in this time.'] : several ? [MEANING] : []),
    ...totals.flatMap((all) =>
      currencyBlocks(
        journal,
        visits,
        all,
        held.filter(({ currency }) => currency === all.currency),
        { period, by, sheet, several },
      ),
    ),
  ];
  return `${blocks.join('\n\n')}\n`;
};
