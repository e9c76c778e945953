import { describe, expect, it } from 'vitest';
import { monthsFrom } from '../../src/reckon/use/months.ts';
import {
  groupsTogether,
  USAGE_BY,
  type UsageBy,
  type UsageGroup,
  usageBy,
  usageInAll,
} from '../../src/reckon/use/usage-by.ts';
import { reckonAll } from '../../src/reckon/visit.ts';
import { equal, sum, toFixed } from '../../src/text/exact.ts';
import { journalOf } from './journal-of.ts';
import { WIDE_SHELF } from './reckoned.ts';

const NOTES = `salon harbour
money GBP
${WIDE_SHELF}
visit 2025-09-01 wren-abbott by io
bowl A 30 cream 7/1 + 10 cream 10/1 + 60 dev-6
left A 20 binned
fit 1 goods-a
visit 2025-10-01 wren-abbott by nia
bowl A 50 clay + 100 dev-6
visit 2025-12-01 kit-hollin
bowl N 30 neon teal + 10 caly
`;

const journal = journalOf(NOTES);
const all = [...reckonAll(journal).values()].flat();
const by = (one: UsageBy): UsageGroup[] => usageBy(all, {}, journal.shelf, one);
const text = ({ name, visits, mixed, left }: UsageGroup): string =>
  `${name} ${visits}x ${toFixed(mixed, 0)}/${toFixed(left, 0)}`;

describe('usageBy', () => {
  it('groups by each of its words', () => {
    expect(by('product').map(text)).toEqual([
      'caly 1x 10/0',
      'clay 1x 50/0',
      'cream 1x 40/8',
      'dev-6 2x 160/12',
      'goods-a 1x 0/0',
      'neon 1x 30/0',
    ]);
    expect(by('shade').map(({ name }) => name)).toEqual([
      'caly',
      'clay',
      'cream 7/1',
      'cream 10/1',
      'dev-6',
      'goods-a',
      'neon teal',
    ]);
    expect(by('kind').map(text)).toEqual([
      ' 1x 10/0',
      'developer 2x 160/12',
      'goods 1x 0/0',
      'lightener 1x 50/0',
      'permanent 1x 40/8',
      'semi 1x 30/0',
    ]);
    expect(by('stylist').map(text)).toEqual([' 1x 40/0', 'io 1x 100/20', 'nia 1x 150/0']);
    expect(by('client').map(text)).toEqual(['kit-hollin 1x 40/0', 'wren-abbott 2x 250/20']);
    expect(by('month').map(text)).toEqual(['2025-09 1x 100/20', '2025-10 1x 150/0', '2025-12 1x 40/0']);
  });

  it('counts goods by the piece apart, with their cost', () => {
    const goods = by('kind').find(({ name }) => name === 'goods');
    expect(goods).toMatchObject({ weighed: false, unpriced: [] });
    expect(goods && [goods.pieces, goods.cost].map((value) => value && toFixed(value, 0))).toEqual(['1', '1450']);
  });

  it('names what has no price, and sums what has one', () => {
    const [kit] = by('client');
    expect(kit?.unpriced).toEqual(['neon', 'caly']);
    expect(kit?.cost).toBeUndefined();
    expect(usageInAll(all, {}, journal.shelf)?.cost).toBeDefined();
  });

  it('is weighed as soon as anything in it is, in whatever order it was used', () => {
    const later = journalOf(
      `${WIDE_SHELF}visit 2025-09-01 wren-abbott\nfit 1 goods-a\nvisit 2025-10-01 wren-abbott\nbowl A 50 clay + 100 dev-6\n`,
    );
    const [wren] = usageBy([...reckonAll(later).values()].flat(), {}, later.shelf, 'client');
    expect(wren).toMatchObject({ name: 'wren-abbott', visits: 2, weighed: true });
  });

  it('has packs only where a group is one product', () => {
    expect(by('product').find(({ name }) => name === 'cream')?.packs).toBeDefined();
    for (const one of ['kind', 'stylist', 'client', 'month'] as const)
      expect(by(one).some(({ packs }) => packs !== undefined)).toBe(false);
  });

  it('every grouping comes to the same', () => {
    const whole = usageInAll(all, {}, journal.shelf);
    if (whole === undefined) throw new Error('the notes use something');
    expect(whole.visits).toBe(3);
    for (const one of USAGE_BY) {
      expect(equal(sum(by(one).map(({ mixed }) => mixed)), whole.mixed)).toBe(true);
      expect(equal(sum(by(one).flatMap(({ cost }) => cost ?? [])), whole.cost ?? sum([]))).toBe(true);
    }
    expect(groupsTogether(by('shade'))?.mixed).toEqual(whole.mixed);
    expect(usageInAll(all, { from: '2026-01-01' }, journal.shelf)).toBeUndefined();
  });
});

describe('monthsFrom', () => {
  it('counts both ends, over the turn of a year', () => {
    expect(monthsFrom('2025-11', '2026-02')).toEqual(['2025-11', '2025-12', '2026-01', '2026-02']);
    expect(monthsFrom('2025-11', '2025-11')).toEqual(['2025-11']);
    expect(monthsFrom('2025-11', '2025-10')).toEqual([]);
  });
});
