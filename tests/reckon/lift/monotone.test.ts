import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { monotoneFit, type Observation } from '../../../src/reckon/lift/monotone.ts';

const at = (x: number, low: number, high = low, weight = 1): Observation => ({ x, low, high, weight });

const valuesOf = (...observations: Observation[]): number[] =>
  monotoneFit(observations).map(({ value }) => Math.round(value * 100) / 100);

describe('the monotone fit', () => {
  it('goes through points that rise, and of nothing is nothing', () => {
    expect(valuesOf(at(10, 5), at(20, 7), at(30, 7))).toEqual([5, 7, 7]);
    expect(valuesOf()).toEqual([]);
  });

  it('gives points that fall their mean, by weight', () => {
    expect(valuesOf(at(10, 7), at(20, 5))).toEqual([6, 6]);
    expect(valuesOf(at(10, 7, 7, 3), at(20, 5))).toEqual([6.5, 6.5]);
  });

  it('pools back as far as the fall reaches', () => {
    expect(valuesOf(at(10, 4), at(20, 6), at(30, 7), at(40, 2))).toEqual([4, 5, 5, 5]);
  });

  it('takes the middle of a span that nothing else decides', () => {
    expect(valuesOf(at(10, 4, 6), at(20, 5, 8))).toEqual([5, 6.5]);
  });

  it('moves freely within spans, and from a span only by its nearer end', () => {
    expect(valuesOf(at(10, 5, 9), at(20, 6))).toEqual([6, 6]);
    expect(valuesOf(at(10, 8), at(20, 5, 7))).toEqual([7.5, 7.5]);
    expect(valuesOf(at(10, 8, 9), at(20, 4, 5))).toEqual([6.5, 6.5]);
  });

  it('gives one value to what was seen at one x', () => {
    expect(valuesOf(at(20, 7), at(10, 4), at(20, 5))).toEqual([4, 6, 6]);
  });

  const observations = fc.array(
    fc
      .tuple(fc.integer({ min: 0, max: 9 }), fc.integer({ min: 1, max: 20 }), fc.integer({ min: 0, max: 4 }))
      .map(([x, low, wide]): Observation => ({ x, low, high: low + wide })),
    { minLength: 1, maxLength: 14 },
  );

  it('never falls, and stays within what was seen', () => {
    fc.assert(
      fc.property(observations, (seen) => {
        const values = monotoneFit(seen).map(({ value }) => value);
        for (const [index, value] of values.slice(1).entries())
          expect(value).toBeGreaterThanOrEqual(values[index] ?? 0);
        expect(Math.min(...values)).toBeGreaterThanOrEqual(Math.min(...seen.map(({ low }) => low)));
        expect(Math.max(...values)).toBeLessThanOrEqual(Math.max(...seen.map(({ high }) => high)));
      }),
    );
  });

  it('counts a weight of two as the same seen twice', () => {
    fc.assert(
      fc.property(observations, (seen) => {
        const twice = monotoneFit(seen.flatMap((one) => [one, one]));
        const heavy = monotoneFit(seen.map((one) => ({ ...one, weight: 2 })));
        for (const [index, { value }] of heavy.entries()) expect(twice[2 * index]?.value).toBeCloseTo(value, 9);
      }),
    );
  });
});
