import type { Journal } from '../journal/journal.ts';
import { currencyDecimals } from '../reckon/currency.ts';
import type { UsageBy, UsageGroup } from '../reckon/use/usage-by.ts';
import { div, type Exact, exact, toFixed } from '../text/exact.ts';
import { type Cell, csvText } from './csv.ts';

const figure = (value: Exact | undefined): Cell => value && toFixed(value, 3);

const FIGURES = [
  'visits',
  'mixed_g',
  'used_g',
  'left_g',
  'binned_g',
  'kept_g',
  'given_g',
  'pieces',
  'packs',
  'cost',
  'cost_of_left',
  'currency',
  'no_price',
];

/** The columns that name a group. */
const namesOf = (by: UsageBy): readonly string[] =>
  by === 'shade' ? ['product', 'shade'] : by === 'client' ? ['client', 'full_name'] : [by];

const nameCells = (journal: Journal, by: UsageBy, { name, product, shade }: UsageGroup): Cell[] => {
  if (by === 'shade') return [product, shade];
  return by === 'client' ? [name, journal.clients.get(name)?.full ?? name] : [name];
};

/** Groups of use as comma-separated values, money in the currency’s own decimals. */
export const usageCsv = (journal: Journal, by: UsageBy, groups: readonly UsageGroup[]): string => {
  const { currency } = journal.salon;
  const places = currencyDecimals(currency);
  const money = (value: Exact | undefined): Cell => value && toFixed(div(value, exact(10 ** places)), places);
  return csvText(
    [...namesOf(by), ...FIGURES],
    groups.map((group) => [
      ...nameCells(journal, by, group),
      group.visits,
      ...[group.mixed, group.used, group.left].map(figure),
      ...[group.fate.binned, group.fate.kept, group.fate.given].map(figure),
      figure(group.pieces),
      figure(group.packs),
      money(group.cost),
      money(group.costOfLeft),
      currency,
      group.unpriced.join(' '),
    ]),
  );
};
