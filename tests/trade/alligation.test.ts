import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compare, type Exact, equal, exact, mul, ONE, sign, sum, ZERO } from '../../src/text/exact.ts';
import { alligate, alligateMany, blendWeights } from '../../src/trade/alligation.ts';

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

describe('blendWeights', () => {
  it('gives weights that add up to the total', () => {
    expect(blendWeights(exact(90), exact(9), ZERO, exact(12))).toStrictEqual({
      low: exact(45, 2),
      high: exact(135, 2),
    });
    expect(() => blendWeights(exact(90), exact(9), ZERO, exact(6))).toThrow(RangeError);
  });
});

describe('alligateMany', () => {
  it('is alligate when there are two', () => {
    fc.assert(
      fc.property(strength, strength, strength, (a, b, c) => {
        const [low, target, high] = [a, b, c].toSorted(compare) as [Exact, Exact, Exact];
        fc.pre(compare(low, target) < 0 && compare(target, high) < 0);
        const { low: lower, high: higher } = alligate(low, high, target);
        expect(alligateMany([high, low], target)).toStrictEqual([higher, lower]);
      }),
    );
  });

  it('gives shares of one total that mix to the target, in the order given', () => {
    fc.assert(
      fc.property(fc.array(strength, { minLength: 1, maxLength: 6 }), strength, (strengths, target) => {
        const sorted = strengths.toSorted(compare);
        fc.pre(compare(sorted[0] ?? ZERO, target) <= 0 && compare(sorted.at(-1) ?? ZERO, target) >= 0);
        const shares = alligateMany(strengths, target);
        expect(sum(shares)).toStrictEqual(ONE);
        expect(mixed(strengths, shares)).toStrictEqual(target);
        expect(shares.every((share) => sign(share) >= 0)).toBe(true);
      }),
    );
  });

  it('leaves out a strength that is the target already, unless nothing else makes it', () => {
    expect(
      alligateMany(
        [6, 9, 12].map((n) => exact(n)),
        exact(9),
      ),
    ).toStrictEqual([exact(1, 2), ZERO, exact(1, 2)]);
    expect(
      alligateMany(
        [9, 12].map((n) => exact(n)),
        exact(9),
      ),
    ).toStrictEqual([ONE, ZERO]);
    expect(
      alligateMany(
        [9, 6, 9].map((n) => exact(n)),
        exact(9),
      ),
    ).toStrictEqual([exact(1, 2), ZERO, exact(1, 2)]);
  });

  it('links every weaker with every stronger', () => {
    const shares = alligateMany([exact(3), exact(6), exact(12)], exact(9));
    expect(shares).toStrictEqual([exact(1, 5), exact(1, 5), exact(3, 5)]);
    expect(equal(sum(shares), ONE)).toBe(true);
  });

  it.each([
    [[3, 6], 9],
    [[9, 12], 6],
    [[], 6],
  ])('has no answer from %j for %s', (strengths, target) => {
    expect(() =>
      alligateMany(
        strengths.map((n) => exact(n)),
        exact(target),
      ),
    ).toThrow(RangeError);
  });
});
