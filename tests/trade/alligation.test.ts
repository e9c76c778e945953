import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compare, type Exact, exact, mul, ONE, sign, sum, ZERO } from '../../src/text/exact.ts';
import { alligate } from '../../src/trade/alligation.ts';

const strength = fc.integer({ min: 0, max: 400 }).map((n) => exact(n, 10));

/** The strength that shares of several strengths mix to. */
const mixed = (strengths: readonly Exact[], shares: readonly Exact[]): Exact =>
  sum(strengths.map((percent, i) => mul(percent, shares[i] ?? ZERO)));

describe('alligate', () => {
  it('gives shares of one total that mix to the target', () => {
    fc.assert(
      fc.property(strength, strength, strength, (a, b, c) => {
        const [low, target, high] = [a, b, c].toSorted(compare) as [Exact, Exact, Exact];
        const shares = alligate(low, high, target);
        expect(sum([shares.low, shares.high])).toStrictEqual(ONE);
        expect(mixed([low, high], [shares.low, shares.high])).toStrictEqual(target);
        expect(sign(shares.low)).not.toBe(-1);
        expect(sign(shares.high)).not.toBe(-1);
      }),
    );
  });

  it('takes one strength alone when it is the target', () => {
    expect(alligate(exact(6), exact(12), exact(6))).toStrictEqual({ low: ONE, high: ZERO });
    expect(alligate(exact(6), exact(12), exact(12))).toStrictEqual({ low: ZERO, high: ONE });
    expect(alligate(exact(6), exact(6), exact(6))).toStrictEqual({ low: ONE, high: ZERO });
  });

  it.each([
    [6, 12, 5],
    [6, 12, 13],
    [6, 6, 7],
    [12, 6, 9],
  ])('has no answer between %s and %s for %s', (low, high, target) => {
    expect(() => alligate(exact(low), exact(high), exact(target))).toThrow(RangeError);
  });

  it('names the strength that no mixture reaches', () => {
    expect(() => alligate(exact(6), exact(12), exact(25, 2))).toThrow('no mixture of these strengths reaches 25/2');
  });
});
