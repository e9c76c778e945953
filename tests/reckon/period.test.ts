import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isWithin, type UsageRow, usage } from '../../src/reckon/use/period.ts';
import { reckonAll } from '../../src/reckon/visit.ts';
import { add, equal, sum, toFixed } from '../../src/text/exact.ts';
import { journalOf } from './journal-of.ts';
import { WIDE_SHELF } from './reckoned.ts';

const rowsOf = (notes: string, period: Parameters<typeof usage>[1] = {}): UsageRow[] => {
  const journal = journalOf(`salon harbour\nmoney GBP\n${WIDE_SHELF}\n${notes}`);
  return usage([...reckonAll(journal).values()].flat(), period, journal.shelf);
};

const text = ({ product, shade, visits, mixed, used, left, packs, cost, costOfLeft }: UsageRow): string =>
  [
    [product, shade].filter((part) => part !== undefined).join(' '),
    `${visits}x`,
    ...[mixed, used, left].map((weight) => toFixed(weight, 0)),
    ...[packs, cost, costOfLeft].map((figure, index) =>
      figure === undefined ? '?' : toFixed(figure, index === 0 ? 2 : 0),
    ),
  ].join(' ');

const visit = (date: string, lines: string): string => `visit ${date} wren-abbott\n${lines}\n`;

describe('isWithin', () => {
  it('counts both ends, and an open one', () => {
    expect(isWithin('2026-09-01', { from: '2026-09-01', to: '2026-09-30' })).toBe(true);
    expect(isWithin('2026-09-30', { from: '2026-09-01', to: '2026-09-30' })).toBe(true);
    expect(isWithin('2026-08-31', { from: '2026-09-01' })).toBe(false);
    expect(isWithin('2026-10-01', { to: '2026-09-30' })).toBe(false);
    expect(isWithin('2026-10-01', {})).toBe(true);
  });
});

describe('usage', () => {
  it('adds up products and shades, by product and then by depth', () => {
    expect(
      rowsOf(
        visit('2025-09-01', 'bowl A 30 cream 10/1 + 45 dev-6\nbowl B 20 cream 7/1 + 30 dev-6') +
          visit('2025-09-02', 'bowl A 30 cream 7/1 + 10 cream 7/0 + 10 cream clear + 75 dev-6\nleft A 25 binned'),
      ).map(text),
    ).toEqual([
      'cream clear 1x 10 8 2 0.17 100 20',
      'cream 7/0 1x 10 8 2 0.17 100 20',
      'cream 7/1 2x 50 44 6 0.83 500 60',
      'cream 10/1 1x 30 30 0 0.50 300 0',
      'dev-6 2x 150 135 15 0.15 113 11',
    ]);
  });

  it('puts a range without a shade first', () => {
    expect(
      rowsOf(visit('2025-09-01', 'bowl A 10 cream clear + 10 cream 7/0 + 10 cream + 45 dev-6')).map(
        ({ product, shade }) => `${product} ${shade}`,
      ),
    ).toEqual(['cream undefined', 'cream clear', 'cream 7/0', 'dev-6 undefined']);
  });

  it('counts only the period', () => {
    const notes = visit('2025-08-31', 'bowl A 30 clay + 60 dev-6') + visit('2025-09-01', 'bowl A 10 clay + 20 dev-6');
    expect(rowsOf(notes, { from: '2025-09-01', to: '2025-09-30' }).map(text)).toEqual([
      'clay 1x 10 10 0 0.02 48 0',
      'dev-6 1x 20 20 0 0.02 15 0',
    ]);
    expect(rowsOf(notes, { from: '2026-01-01' })).toEqual([]);
  });

  it('takes each visit at its own price', () => {
    const notes = visit('2026-02-28', 'bowl A 500 clay + 0 dev-6') + visit('2026-03-01', 'bowl A 500 clay + 0 dev-6');
    expect(rowsOf(notes).map(text)[0]).toBe('clay 2x 1000 1000 0 2.00 4950 0');
  });

  it('parts what is left by its fate', () => {
    const [clay] = rowsOf(
      visit(
        '2025-09-01',
        'bowl A 30 clay + 60 dev-6\nbowl B 30 clay + 60 dev-6\nbowl C 30 clay + 60 dev-6\nbowl D 30 clay + 60 dev-6\nleft A 9 binned\nleft B 18 kept\nleft C 27 given\nleft D 36',
      ),
    );
    expect(clay && Object.entries(clay.fate).map(([fate, weight]) => `${fate} ${toFixed(weight, 0)}`)).toEqual([
      'binned 3',
      'kept 6',
      'given 9',
      'unsaid 12',
    ]);
    expect(clay && toFixed(clay.left, 0)).toBe('30');
  });

  it('says a price or a pack that is not known', () => {
    expect(rowsOf(visit('2025-09-01', 'bowl A 30 neon teal + 10 caly')).map(text)).toEqual([
      'caly 1x 10 10 0 ? ? ?',
      'neon teal 1x 30 30 0 ? ? ?',
    ]);
    expect(rowsOf(visit('2025-09-01', 'bowl A 30 spray + 30 odd')).map(text)).toEqual([
      'odd 1x 30 30 0 ? ? ?',
      'spray 1x 30 30 0 ? ? ?',
    ]);
    const mixed = visit('2025-09-01', 'bowl A 30 caly') + visit('2025-09-02', 'bowl A 30 caly');
    expect(rowsOf(mixed).map(text)).toEqual(['caly 2x 60 60 0 ? ? ?']);
  });

  it('counts goods by the piece', () => {
    const [row] = rowsOf(visit('2025-09-01', 'fit 2 goods-a') + visit('2025-09-02', 'fit 1 goods-a'));
    expect(row && text(row)).toBe('goods-a 2x 3 3 0 3.00 4350 0');
    expect(row?.pieces).toBe(true);
  });

  it('costs nothing where nothing was mixed', () => {
    expect(rowsOf(visit('2025-09-01', 'bowl A 0 clay + 60 dev-6')).map(text)[0]).toBe('clay 1x 0 0 0 0.00 0 0');
    expect(rowsOf(visit('2025-09-01', 'bowl A 0 neon teal')).map(text)[0]).toBe('neon teal 1x 0 0 0 ? ? ?');
  });

  it('adds up: mixed is used and left, and left is the sum of its fates', () => {
    const bowl = fc.record({
      clay: fc.integer({ min: 1, max: 60 }),
      developer: fc.integer({ min: 1, max: 120 }),
      left: fc.integer({ min: 0, max: 50 }),
      fate: fc.constantFrom('binned', 'kept', 'given', ''),
    });
    fc.assert(
      fc.property(fc.array(bowl, { minLength: 1, maxLength: 4 }), (bowls) => {
        const notes = bowls.map(
          ({ clay, developer, left, fate }, index) =>
            `bowl ${'ABCD'[index]} ${clay} clay + ${developer} dev-6\nleft ${'ABCD'[index]} ${Math.min(left, clay + developer)} ${fate}`,
        );
        for (const row of rowsOf(visit('2025-09-01', notes.join('\n')))) {
          expect(equal(row.mixed, add(row.used, row.left))).toBe(true);
          expect(equal(row.left, sum(Object.values(row.fate)))).toBe(true);
        }
      }),
      { numRuns: 40 },
    );
  });
});
