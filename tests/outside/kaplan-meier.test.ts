import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { expectedOf, survivalOf, type Waited } from '../../src/reckon/lift/censored.ts';

/**
 * Weeks of remission of the 21 treated children of Freireich and others (Blood 21, 1963), with the product-limit estimates
 * that Gehan’s and every later text gives of them (Biometrika 52, 1965): from memory, and worked out by hand beside it.
 * `+`: still in remission when last seen.
 */
const WEEKS = '6 6 6 6+ 7 9+ 10 10+ 11+ 13 16 17+ 19+ 20+ 22 23 25+ 32+ 32+ 34+ 35+'
  .split(' ')
  .map((typed): Waited => ({ value: Number.parseInt(typed, 10), ended: !typed.endsWith('+'), weight: 1 }));

/** Share that lasts beyond each value that ended. */
const beyond = (all: readonly Waited[]): [value: number, share: number][] => {
  let left = 1;
  return survivalOf(all).masses.map(({ value, mass }) => {
    left -= mass;
    return [value, Math.round(left * 1000) / 1000];
  });
};

describe('the product-limit estimate', () => {
  it('is that of the published example', () => {
    expect(beyond(WEEKS)).toEqual([
      [6, 0.857], // 18/21
      [7, 0.807], // × 16/17
      [10, 0.753], // × 14/15
      [13, 0.69], // × 11/12
      [16, 0.627], // × 10/11
      [22, 0.538], // × 6/7
      [23, 0.448], // × 5/6
      [35, 0], // what is left is set at the last value seen
    ]);
    expect(survivalOf(WEEKS).tail).toBeCloseTo(0.448, 3);
  });

  it('hands the weight of what was not waited for on to the right', () => {
    const value = fc.record({
      value: fc.integer({ min: -20, max: 20 }),
      ended: fc.boolean(),
      weight: fc.constantFrom(0.25, 0.5, 1),
    });
    fc.assert(
      fc.property(fc.array(value, { minLength: 1, maxLength: 30 }), (all) => {
        const survival = survivalOf(all);
        const weights = all.reduce((sum, { weight }) => sum + weight, 0);
        const each = all.reduce((sum, one) => sum + one.weight * expectedOf(survival, one, Math.abs), 0) / weights;
        const whole = survival.masses.reduce((sum, { value: at, mass }) => sum + mass * Math.abs(at), 0);
        expect(survival.masses.reduce((sum, { mass }) => sum + mass, 0)).toBeCloseTo(1, 9);
        expect(each).toBeCloseTo(whole, 9);
      }),
    );
  });
});
