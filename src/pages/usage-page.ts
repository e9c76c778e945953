import type { Journal } from '../journal/journal.ts';
import { currencyDecimals } from '../reckon/currency.ts';
import type { VisitReckoned } from '../reckon/model.ts';
import { corrections } from '../reckon/money/corrections.ts';
import { grams, listed } from '../reckon/say.ts';
import { monthsFrom } from '../reckon/use/months.ts';
import { isWithin } from '../reckon/use/period.ts';
import { groupsTogether, type UsageBy, type UsageGroup, usageBy, usageInAll } from '../reckon/use/usage-by.ts';
import { type Exact, isZero, roundTo, toNumber } from '../text/exact.ts';
import { correctionsBlocks } from './corrections-table.ts';
import { dayText } from './days.ts';
import { escapeText } from './escape.ts';
import { type MonthBar, monthBars } from './figures/month-bars.ts';
import { noFigures, type Sheet } from './figures/sheet.ts';
import { minorText } from './money-words.ts';
import { joined } from './noted.ts';
import { GROUP_HEADS, goodsTable, groupsTable } from './usage-groups.ts';

/** First and last day of a report, both counted, `YYYY-MM-DD`. */
export type UsagePeriod = { readonly from: string; readonly to: string };

/** `by`: one grouping alone instead of the whole report. */
export type UsageOptions = { readonly by?: UsageBy; readonly sheet?: Sheet };

/** The report in a few sentences: what it comes to, what was left, what has no price. */
const summary = ({ salon }: Journal, all: UsageGroup): string => {
  const weight = (value: Exact): string => grams(roundTo(value, salon.scale));
  return joined(
    [
      all.weighed && `- **Mixed** ${weight(all.mixed)}, of which ${weight(all.used)} used and ${weight(all.left)} left`,
      all.cost && `- **Cost** ${minorText(all.cost, salon.currency)} of products`,
      all.weighed &&
        all.costOfLeft &&
        `- **Left** ${minorText(all.costOfLeft, salon.currency)} of that stood in what was left`,
      !isZero(all.fate.unsaid) && `- **No fate noted** for ${weight(all.fate.unsaid)} of what was left`,
      all.unpriced.length > 0 &&
        `- **No cost** for some or all of ${listed([...all.unpriced].sort().map(escapeText))}, without a price on the shelf or a weight in the notes: the sums leave that out`,
    ],
    '\n',
  );
};

const ROUNDED =
  'Each figure is rounded by itself, the sums from the exact weights: a column may add up to a little more or less. `money` rounds the cost of each visit, and may differ as little.';

/** What a table by shade leaves out: products that have none. */
const withoutShade = ({ salon }: Journal, groups: readonly UsageGroup[]): string[] => {
  const plain = groupsTogether(groups.filter(({ weighed, shade }) => weighed && shade === undefined));
  if (plain === undefined) return [];
  const cost = plain.cost === undefined ? '' : `, ${minorText(plain.cost, salon.currency)}`;
  return [
    `What has no shade stands by product alone, a lightener or a developer: ${grams(roundTo(plain.mixed, salon.scale))}${cost} besides.`,
  ];
};

/** The months between the first and the last that used anything, as bars of grams. */
const gramBars = ({ salon }: Journal, months: readonly UsageGroup[]): MonthBar[] => {
  const found = new Map(months.map((group) => [group.name, group]));
  return monthsFrom(months[0]?.name ?? '', months.at(-1)?.name ?? '').map((month) => {
    const group = found.get(month);
    if (group === undefined) return { month, lower: 0, upper: 0, says: `${month}: nothing` };
    const weight = (value: Exact): string => grams(roundTo(value, salon.scale));
    return {
      month,
      lower: toNumber(group.left),
      upper: toNumber(group.used),
      says: `${month}: ${weight(group.used)} used, ${weight(group.left)} left`,
    };
  });
};

/** The months as bars of money: what stood in what was left, and the rest. */
const costBars = ({ salon: { currency } }: Journal, months: readonly UsageGroup[]): MonthBar[] => {
  const found = new Map(months.map((group) => [group.name, group]));
  const minors = 10 ** currencyDecimals(currency);
  return monthsFrom(months[0]?.name ?? '', months.at(-1)?.name ?? '').map((month) => {
    const { cost, costOfLeft } = found.get(month) ?? {};
    if (cost === undefined) return { month, lower: 0, upper: 0, says: `${month}: nothing with a price` };
    const left = costOfLeft === undefined ? 0 : toNumber(costOfLeft) / minors;
    return {
      month,
      lower: left,
      upper: toNumber(cost) / minors - left,
      says: `${month}: ${minorText(cost, currency)}, of it ${minorText(costOfLeft ?? 0, currency)} left`,
    };
  });
};

const monthBlocks = (journal: Journal, months: readonly UsageGroup[], all: UsageGroup, sheet: Sheet): string[] => {
  const [left, used] = ['left over', 'used'];
  const unit = journal.salon.currency ?? 'cost';
  return [
    '## By month',
    ...sheet([
      (id) =>
        monthBars(
          id,
          { title: 'Grams mixed, by month', unit: 'g', lower: left, upper: used },
          gramBars(journal, months),
        ),
    ]),
    ...sheet([
      (id) =>
        monthBars(
          id,
          { title: 'Cost of the products mixed, by month', unit, lower: left, upper: used },
          costBars(journal, months),
        ),
    ]),
    groupsTable(journal, 'month', months, all),
  ];
};

/** One grouping as a section. Products and shades leave out goods by the piece, which have a table of their own. */
const section = (journal: Journal, by: UsageBy, groups: readonly UsageGroup[], all: UsageGroup): string[] => {
  const isOne = by === 'product' || by === 'shade';
  const goods = groups.filter(({ pieces }) => isOne && !isZero(pieces));
  const weighed = isOne
    ? groups.filter((group) => group.weighed && (by === 'product' || group.shade !== undefined))
    : groups;
  const total = isOne ? groupsTogether(weighed) : all;
  return [
    ...(weighed.length === 0
      ? []
      : [
          `## By ${GROUP_HEADS[by].toLowerCase()}`,
          ...(by === 'shade' ? withoutShade(journal, groups) : []),
          groupsTable(journal, by, weighed, total),
        ]),
    ...(goods.length === 0 ? [] : ['## By the piece', goodsTable(journal.salon, goods)]),
  ];
};

/**
 * The product report of a period as Markdown: what was mixed, used and left, the packs it comes to and what it cost, by
 * product and by shade, or by one thing alone; with corrections and redos. Grams are rounded to the scales and money to
 * the currency, each figure once and by itself.
 */
export const usageMarkdown = (
  journal: Journal,
  reckoned: Iterable<VisitReckoned>,
  period: UsagePeriod,
  { by, sheet = noFigures }: UsageOptions = {},
): string => {
  const { salon, shelf } = journal;
  const visits = [...reckoned].filter(({ date }) => isWithin(date, period));
  const all = usageInAll(visits, period, shelf);
  const of = (one: UsageBy): UsageGroup[] => usageBy(visits, period, shelf, one);
  const shades = of('shade').filter(({ weighed }) => weighed);
  const whole = (used: UsageGroup): string[] => {
    const months = of('month');
    return [
      ...(months.length < 2 ? [] : monthBlocks(journal, months, used, sheet)),
      ...section(journal, 'product', of('product'), used),
      ...section(journal, 'shade', shades, used),
    ];
  };
  const one = (used: UsageGroup, wanted: UsageBy): string[] =>
    wanted === 'month' ? monthBlocks(journal, of('month'), used, sheet) : section(journal, wanted, of(wanted), used);
  const using = all === undefined || all.visits === visits.length ? '' : `, products used at ${all.visits} of them`;
  const count = `${visits.length} ${visits.length === 1 ? 'visit' : 'visits'}${using}`;
  const blocks = [
    '# Products used',
    joined([`${dayText(period.from)}, to ${dayText(period.to)}`, count, salon.full && escapeText(salon.full)], ' · '),
    all === undefined ? 'The notes show no product used in this time.' : summary(journal, all),
    ...(shades.length < 2 ? [] : [ROUNDED]),
    ...(all === undefined ? [] : by === undefined ? whole(all) : one(all, by)),
    ...(by === undefined ? correctionsBlocks(journal, corrections(visits, period), visits.length) : []),
  ];
  return `${blocks.join('\n\n')}\n`;
};
