import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compare, equal, exact } from '../../src/text/exact.ts';
import {
  DEFAULT_GROWTH,
  daysOfUnit,
  growthRate,
  isPlausibleGrowth,
  PLAUSIBLE_GROWTH,
  regrowth,
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
    expect(compare(PLAUSIBLE_GROWTH.low, PLAUSIBLE_GROWTH.high)).toBe(-1);
  });

  it('is spoken by the day, the week or the mean month', () => {
    expect(['d', 'day', 'w', 'week', 'h', ''].map(daysOfUnit)).toEqual([1, 1, 7, 7, undefined, undefined]);
    expect(['mo', 'month'].map(daysOfUnit)).toEqual([30.4375, 30.4375]);
  });
});
