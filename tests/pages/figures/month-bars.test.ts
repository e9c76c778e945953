import { describe, expect, it } from 'vitest';
import { type MonthBar, monthBars } from '../../../src/pages/figures/month-bars.ts';

const TITLE = { title: 'Grams <by> month', unit: 'g', lower: 'left over', upper: 'used' };

const bar = (month: string, lower: number, upper: number): MonthBar => ({
  month,
  lower,
  upper,
  says: `${month}: ${upper} g used, ${lower} g left`,
});

const heights = (svg: string, fill: string): number[] =>
  [...svg.matchAll(new RegExp(`<rect [^>]*height="([\\d.]+)" class="bar ${fill}"`, 'g'))].map(([, height]) =>
    Number(height),
  );

describe('monthBars', () => {
  const drawn = monthBars('figure-1', TITLE, [bar('2026-01', 50, 150), bar('2026-02', 100, 300), bar('2026-03', 0, 0)]);
  const [wide = '', narrow = ''] = (drawn ?? '').split('<svg').slice(1);

  it('draws heights in proportion, wide and narrow alike', () => {
    for (const svg of [wide, narrow]) {
      const [first = 0, second = 0, more] = heights(svg, 'clear');
      expect(second / first).toBeCloseTo(2, 5);
      const [left = 0] = heights(svg, 'key-fill');
      expect(first / left).toBeCloseTo(3, 5);
      expect(more).toBeUndefined();
    }
  });

  it('stays inside its picture', () => {
    for (const [, x, y, width, height] of wide.matchAll(
      /<rect x="([\d.]+)" y="([\d.]+)" width="([\d.]+)" height="([\d.]+)"/g,
    )) {
      expect(Number(x) + Number(width)).toBeLessThanOrEqual(720);
      expect(Number(y)).toBeGreaterThanOrEqual(0);
      expect(Number(y) + Number(height)).toBeLessThanOrEqual(236);
    }
  });

  it('says every month in words, and lets no text be markup', () => {
    expect(drawn).toContain('2026-01: 150 g used, 50 g left; 2026-02: 300 g used, 100 g left; 2026-03: 0 g used');
    expect(drawn).not.toContain('<by>');
  });

  it('draws nothing for one month, or for nothing', () => {
    expect(monthBars('f', TITLE, [bar('2026-01', 1, 2)])).toBeUndefined();
    expect(monthBars('f', TITLE, [bar('2026-01', 0, 0), bar('2026-02', 0, 0)])).toBeUndefined();
  });

  it('has round steps whatever the size', () => {
    for (const [most, step] of [
      [0.9, '0.5'],
      [7, '2'],
      [4200, '2000'],
    ] as const)
      expect(monthBars('f', TITLE, [bar('2026-01', 0, most), bar('2026-02', 0, 0)])).toContain(`>${step}</text>`);
  });
});
