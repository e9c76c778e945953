import type { Journal } from '../journal/journal.ts';
import type { SalonSettings } from '../journal/salon.ts';
import { figure } from '../reckon/say.ts';
import type { UsageBy, UsageGroup } from '../reckon/use/usage-by.ts';
import { type Exact, isZero, roundTo } from '../text/exact.ts';
import { escapeText } from './escape.ts';
import { minorFigure } from './money-words.ts';
import { clientName, stylistName } from './noted.ts';
import { type Column, table } from './tables.ts';

const figuresColumns = (...heads: string[]): Column[] => heads.map((head) => ({ head, figures: true }));

/** What a group of use is called in the head of its column. */
export const GROUP_HEADS: Readonly<Record<UsageBy, string>> = {
  product: 'Product',
  shade: 'Shade',
  kind: 'Kind',
  stylist: 'Stylist',
  client: 'Client',
  month: 'Month',
};

const hasPacks = (by: UsageBy): boolean => by === 'product' || by === 'shade';

const unitOf = (currency: string | undefined): string => (currency === undefined ? '' : ` ${escapeText(currency)}`);

/** A group as a page calls it. */
export const groupName = (journal: Journal, by: UsageBy, name: string): string => {
  if (name === '') return by === 'stylist' ? 'no stylist noted' : 'not on the shelf';
  if (by === 'client') return clientName(journal, { name });
  return by === 'stylist' ? stylistName(journal, { name }) : escapeText(name);
};

const cellsOf = (name: string, group: UsageGroup, by: UsageBy, { scale, currency }: SalonSettings): string[] => {
  const weight = (value: Exact): string => figure(roundTo(value, scale));
  const sum = (value: Exact | undefined): string => (value === undefined ? 'no price' : minorFigure(value, currency));
  const { binned, kept, given } = group.fate;
  return [
    name,
    ...(hasPacks(by) ? [] : [`${group.visits}`]),
    ...[group.mixed, group.used, group.left, binned, kept, given].map(weight),
    ...(hasPacks(by) ? [group.packs === undefined ? '' : figure(group.packs, 1)] : []),
    sum(group.cost),
    sum(group.costOfLeft),
  ];
};

/**
 * Groups of use as a table, with all of them together in a last row. Packs stand only where a group is one product;
 * goods by the piece are in the cost alone.
 */
export const groupsTable = (
  journal: Journal,
  by: UsageBy,
  groups: readonly UsageGroup[],
  all: UsageGroup | undefined,
): string => {
  const { salon } = journal;
  const rows = groups.map((group) => cellsOf(groupName(journal, by, group.name), group, by, salon));
  if (all !== undefined && groups.length > 1)
    rows.push(cellsOf('In all', { ...all, packs: undefined }, by, salon).map((cell) => cell && `**${cell}**`));
  return table(
    [
      { head: GROUP_HEADS[by] },
      ...figuresColumns(
        ...(hasPacks(by) ? [] : ['Visits']),
        'Mixed g',
        'Used g',
        'Left g',
        'Binned g',
        'Kept g',
        'Given g',
        ...(hasPacks(by) ? ['Packs'] : []),
        `Cost${unitOf(salon.currency)}`,
        `Left${unitOf(salon.currency)}`,
      ),
    ],
    rows,
  );
};

/** Goods sold by the piece as a table; none when there are none. */
export const goodsTable = ({ currency }: SalonSettings, groups: readonly UsageGroup[]): string =>
  table(
    [{ head: 'Goods' }, ...figuresColumns('Visits', 'Pieces', `Cost${unitOf(currency)}`)],
    groups
      .filter(({ pieces }) => !isZero(pieces))
      .map(({ name, visits, pieces, cost }) => [
        escapeText(name),
        `${visits}`,
        figure(pieces),
        cost === undefined ? 'no price' : minorFigure(cost, currency),
      ]),
  );
