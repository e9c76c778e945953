import type { Journal } from '../journal/journal.ts';
import type { SalonSettings } from '../journal/salon.ts';
import type { VisitReckoned } from '../reckon/model.ts';
import { isWithin, type UsageRow, usage } from '../reckon/period.ts';
import { figure, grams, listed } from '../reckon/say.ts';
import { type Exact, isZero, roundTo } from '../text/exact.ts';
import { dayText } from './days.ts';
import { escapeText } from './escape.ts';
import { minorFigure, minorText } from './money-words.ts';
import { joined } from './noted.ts';
import { type Column, table } from './tables.ts';
import { linesOf, productLines, totalLine, type UsageLine } from './usage-lines.ts';

/** First and last day of a report, both counted, `YYYY-MM-DD`. */
export type UsagePeriod = { readonly from: string; readonly to: string };

const figuresColumns = (...heads: string[]): Column[] => heads.map((head) => ({ head, figures: true }));

const columns = (first: string, currency: string | undefined): Column[] => {
  const unit = currency === undefined ? '' : ` ${escapeText(currency)}`;
  return [
    { head: first },
    ...figuresColumns(
      'Mixed g',
      'Used g',
      'Left g',
      'Binned g',
      'Kept g',
      'Given g',
      'Packs',
      `Cost${unit}`,
      `Left${unit}`,
    ),
  ];
};

const cellsOf = (line: UsageLine, { scale, currency }: SalonSettings): string[] => {
  const weight = (value: Exact): string => figure(roundTo(value, scale));
  const sum = (value: Exact | undefined): string => (value === undefined ? 'no price' : minorFigure(value, currency));
  const { binned, kept, given } = line.fate;
  return [
    escapeText(line.name),
    ...[line.mixed, line.used, line.left, binned, kept, given].map(weight),
    line.packs === undefined ? '' : figure(line.packs, 1),
    sum(line.cost),
    sum(line.costOfLeft),
  ];
};

const tableOf = (salon: SalonSettings, first: string, lines: readonly UsageLine[]): string => {
  const total = totalLine(lines);
  const rows = lines.map((line) => cellsOf(line, salon));
  if (total !== undefined && lines.length > 1) rows.push(cellsOf(total, salon).map((cell) => cell && `**${cell}**`));
  return table(columns(first, salon.currency), rows);
};

const goodsTable = ({ currency }: SalonSettings, lines: readonly UsageLine[]): string =>
  table(
    [
      { head: 'Goods' },
      ...figuresColumns('Visits', 'Pieces', currency === undefined ? 'Cost' : `Cost ${escapeText(currency)}`),
    ],
    lines.map(({ name, visits, mixed, cost }) => [
      escapeText(name),
      `${visits}`,
      figure(mixed),
      cost === undefined ? 'no price' : minorFigure(cost, currency),
    ]),
  );

/** The report in a few sentences: what it comes to, what was left, what has no price. */
const summary = (salon: SalonSettings, rows: readonly UsageRow[]): string => {
  const weighed = totalLine(linesOf(rows.filter(({ pieces }) => !pieces)));
  const all = totalLine(linesOf(rows));
  const unpriced = [
    ...new Set(rows.filter(({ cost }) => cost === undefined).map(({ product }) => escapeText(product))),
  ];
  const weight = (value: Exact): string => grams(roundTo(value, salon.scale));
  return joined(
    [
      weighed &&
        `- **Mixed** ${weight(weighed.mixed)}, of which ${weight(weighed.used)} used and ${weight(weighed.left)} left`,
      all?.cost && `- **Cost** ${minorText(all.cost, salon.currency)} of products`,
      weighed?.costOfLeft &&
        `- **Left** ${minorText(weighed.costOfLeft, salon.currency)} of that stood in what was left`,
      weighed &&
        !isZero(weighed.fate.unsaid) &&
        `- **No fate noted** for ${weight(weighed.fate.unsaid)} of what was left`,
      unpriced.length > 0 && `- **No price** on the shelf for ${listed(unpriced)}: the sums leave it out`,
    ],
    '\n',
  );
};

/**
 * The product report of a period as Markdown: what was mixed, used and left, the packs it comes to and what it cost, by
 * product and by shade. Grams are rounded to the scales and money to the currency, each figure once and by itself.
 */
export const usageMarkdown = (
  journal: Journal,
  reckoned: Iterable<VisitReckoned>,
  { from, to }: UsagePeriod,
): string => {
  const { salon } = journal;
  const visits = [...reckoned].filter(({ date }) => isWithin(date, { from, to }));
  const rows = usage(visits, { from, to }, journal.shelf);
  const weighed = rows.filter(({ pieces }) => !pieces);
  const shaded = weighed.filter(({ shade }) => shade !== undefined);
  const goods = rows.filter(({ pieces }) => pieces);
  const count = `${visits.length} ${visits.length === 1 ? 'visit' : 'visits'}`;
  const period = `${dayText(from)}, to ${dayText(to)}`;
  const blocks = [
    '# Products used',
    joined([period, count, salon.full && escapeText(salon.full)], ' · '),
    ...(rows.length === 0 ? ['The notes show no product used in this time.'] : [summary(salon, rows)]),
    ...(weighed.length === 0 ? [] : ['## By product', tableOf(salon, 'Product', productLines(weighed))]),
    ...(shaded.length === 0 ? [] : ['## By shade', tableOf(salon, 'Shade', linesOf(shaded))]),
    ...(goods.length === 0 ? [] : ['## By the piece', goodsTable(salon, linesOf(goods))]),
  ];
  return `${blocks.join('\n\n')}\n`;
};
