import { describe, expect, it } from 'vitest';
import { exact } from '../../src/text/exact.ts';
import {
  AMBIGUOUS_UNITS,
  isLengthUnit,
  isTimeUnit,
  isUnit,
  LENGTH_UNITS,
  TIME_UNITS,
  toGrams,
  toMillimetres,
  UNITS,
} from '../../src/trade/units.ts';

describe('toGrams', () => {
  const density = exact(101, 100);

  it.each([
    ['g', exact(40)],
    ['kg', exact(40_000)],
    ['oz-wt', exact(113_398_092_5, 1_000_000)],
  ] as const)('needs no density for %s', (unit, want) => {
    expect(toGrams(exact(40), unit)).toStrictEqual(want);
    expect(toGrams(exact(40), unit, density)).toStrictEqual(want);
  });

  it.each([
    ['ml', exact(404, 10)],
    ['l', exact(40_400)],
    ['drop', exact(202, 100)],
  ] as const)('needs the density for %s', (unit, want) => {
    expect(toGrams(exact(40), unit)).toBeUndefined();
    expect(toGrams(exact(40), unit, density)).toStrictEqual(want);
  });

  it.each(['oz', 'scoop', 'toString', ''])('knows no unit "%s"', (unit) => {
    expect(toGrams(exact(40), unit, density)).toBeUndefined();
  });
});

describe('unit words', () => {
  it('are those of the notation', () => {
    expect(Object.keys(UNITS)).toEqual(['g', 'kg', 'ml', 'l', 'oz-wt', 'floz-us', 'floz-uk', 'drop']);
    expect(Object.keys(UNITS).every(isUnit)).toBe(true);
    expect(['oz', 'constructor', 'min'].some(isUnit)).toBe(false);
  });

  it('each name their source', () => {
    for (const unit of Object.values(UNITS)) expect(unit.source).toMatch(/[a-z]{3}/);
    expect(UNITS.drop.source).toContain('common practice, no source');
    expect(UNITS['oz-wt'].source).toContain('from memory');
  });

  it('give the four meanings of a bare ounce, each with what to write', () => {
    expect(AMBIGUOUS_UNITS.oz?.map((meaning) => meaning.write)).toEqual(['oz-wt', 'floz-us', 'floz-uk', 'ml']);
    for (const meaning of AMBIGUOUS_UNITS.oz ?? []) {
      expect(isUnit(meaning.write)).toBe(true);
      expect(meaning.means).toMatch(/ounce, \d|weight, \d/);
      expect(meaning.source).not.toBe('');
    }
  });

  it('print in the meanings what the table holds', () => {
    const printed = AMBIGUOUS_UNITS.oz?.map((meaning) => Number(/[\d.]+/.exec(meaning.means)?.[0]));
    expect(printed).toEqual([28.35, 29.57, 28.41, 30]);
  });
});

describe('times and lengths', () => {
  it('count minutes, but for a month', () => {
    expect(TIME_UNITS).toStrictEqual({ min: 1, h: 60, d: 24 * 60, w: 7 * 24 * 60, mo: undefined });
    expect(Object.keys(TIME_UNITS).every(isTimeUnit)).toBe(true);
    expect(['y', 'valueOf'].some(isTimeUnit)).toBe(false);
  });

  it('count millimetres', () => {
    expect(toMillimetres(exact(3), 'mm')).toStrictEqual(exact(3));
    expect(toMillimetres(exact(2), 'cm')).toStrictEqual(exact(20));
    expect(toMillimetres(exact(1, 2), 'in')).toStrictEqual(exact(127, 10));
    expect(Object.keys(LENGTH_UNITS).every(isLengthUnit)).toBe(true);
    expect(['m', 'valueOf'].some(isLengthUnit)).toBe(false);
  });
});
