import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compare, equal, exact } from '../../src/text/exact.ts';
import {
  DEFAULT_GROWTH,
  daysOfUnit,
  growthRate,
  isPlausibleGrowth,
  PLAUSIBLE_GROWTH,
  PUBLISHED_RATES,
  regrowth,
  SURVEY_RANGE,
} from '../../src/trade/growth.ts';

describe('growth', () => {
  it('is days times rate, and a measured length gives the rate back', () => {
    expect(regrowth(56, DEFAULT_GROWTH)).toStrictEqual(exact(196, 10));
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1000 }), fc.integer({ min: 1, max: 500 }), (days, micrometres) => {
        const rate = exact(micrometres, 1000);
        expect(equal(growthRate(regrowth(days, rate), days), rate)).toBe(true);
      }),
    );
    expect(() => growthRate(exact(10), 0)).toThrow(RangeError);
  });

  it('is plausible from the slowest to well above the fastest measured, ends included', () => {
    expect([149, 150, 350, 517, 518].map((um) => isPlausibleGrowth(exact(um, 1000)))).toEqual([
      false,
      true,
      true,
      true,
      false,
    ]);
    for (const { mean } of PUBLISHED_RATES) expect(isPlausibleGrowth(mean)).toBe(true);
    expect(compare(PLAUSIBLE_GROWTH.low, PLAUSIBLE_GROWTH.high)).toBe(-1);
  });

  it('is taken within the range of the survey until it is measured', () => {
    const month = regrowth(30, DEFAULT_GROWTH);
    expect(compare(SURVEY_RANGE.low, month)).toBe(-1);
    expect(compare(month, SURVEY_RANGE.high)).toBe(-1);
  });

  it('is spoken by the day, the week or the mean month', () => {
    expect(['d', 'w', 'mo', 'h', ''].map(daysOfUnit)).toEqual([1, 7, 30.436875, undefined, undefined]);
  });

  it('keys every published rate by its paper and value, and by nothing about a person', () => {
    for (const { key, mean, source } of PUBLISHED_RATES) {
      const [year, value] = key.split('-');
      expect(source).toContain(year);
      expect(mean).toStrictEqual(exact(Number(value), 1000));
    }
    expect(new Set(PUBLISHED_RATES.map((rate) => rate.key)).size).toBe(5);
  });
});
