import fc from 'fast-check';
import Fraction from 'fraction.js';
import { describe, expect, it } from 'vitest';
import {
  add,
  compare,
  div,
  type Exact,
  equal,
  exact,
  exactOf,
  isZero,
  largestRemainder,
  max,
  min,
  mul,
  neg,
  ONE,
  roundTo,
  sign,
  sub,
  sum,
  toFixed,
  toNumber,
  ZERO,
} from '../../src/text/exact.ts';

/** The same value in the other library, for comparison. */
const other = (a: Exact): Fraction => new Fraction(BigInt(a.n), BigInt(a.d));

const isSafe = (x: bigint): boolean => x <= BigInt(Number.MAX_SAFE_INTEGER) && x >= BigInt(Number.MIN_SAFE_INTEGER);

/** Holds when the value equals `want` and is in its one normal form. */
function expectSame(a: Exact, want: Fraction): void {
  const [n, d] = [want.s * want.n, want.d];
  const small = isSafe(n) && isSafe(d);
  expect(a).toStrictEqual(small ? { n: Number(n), d: Number(d) } : { n, d });
}

const small = fc.tuple(fc.integer({ min: -5000, max: 5000 }), fc.integer({ min: 1, max: 2520 }));
const large = fc.tuple(fc.maxSafeInteger(), fc.integer({ min: 1, max: Number.MAX_SAFE_INTEGER }));
const huge = fc.tuple(fc.bigInt({ min: -(10n ** 30n), max: 10n ** 30n }), fc.bigInt({ min: 1n, max: 10n ** 30n }));
const anyExact: fc.Arbitrary<Exact> = fc.oneof(small, large, huge).map(([n, d]) => exact(n, d));
const weight = fc.integer({ min: 0, max: 100_000 }).map((n) => exact(n, 24));

describe('exact', () => {
  it.each([
    [6, 4, { n: 3, d: 2 }],
    [6, -4, { n: -3, d: 2 }],
    [-6, -4, { n: 3, d: 2 }],
    [0, -5, { n: 0, d: 1 }],
    [-0, 1, { n: 0, d: 1 }],
    [7, 7, { n: 1, d: 1 }],
    [3n, 9n, { n: 1, d: 3 }],
    [-3n, -9n, { n: 1, d: 3 }],
    [3n, -9n, { n: -1, d: 3 }],
    [10n ** 20n, 4, { n: 25n * 10n ** 18n, d: 1n }],
    [10n ** 20n, 10n ** 19n, { n: 10, d: 1 }],
    [1e20, 1, { n: 10n ** 20n, d: 1n }],
    [1, 2 ** 53, { n: 1n, d: 2n ** 53n }],
    [2 ** 53 - 1, 1, { n: 2 ** 53 - 1, d: 1 }],
    [1 - 2 ** 53, 1, { n: 1 - 2 ** 53, d: 1 }],
    [-(2 ** 53), 1, { n: -(2n ** 53n), d: 1n }],
  ])('keeps %s / %s in lowest terms', (n, d, want) => {
    expect(exact(n, d)).toStrictEqual(want);
  });

  it('takes a whole number alone', () => {
    expect(exact(5)).toStrictEqual({ n: 5, d: 1 });
    expect(exact(0)).toStrictEqual(ZERO);
    expect(exact(1)).toStrictEqual(ONE);
  });

  it.each([
    [1.5, 1],
    [1, 0.5],
    [Number.NaN, 1],
    [Number.POSITIVE_INFINITY, 1],
  ])('refuses %s / %s', (n, d) => {
    expect(() => exact(n, d)).toThrow(RangeError);
  });

  it('names what is not whole', () => {
    expect(() => exact(1.5, 2)).toThrow('not whole numbers: 1.5 / 2');
  });

  it.each([
    [1, 0],
    [0, 0],
    [1n, 0n],
  ])('refuses to divide %s by %s', (n, d) => {
    expect(() => exact(n, d)).toThrow('division by nought');
  });
});

describe('exactOf', () => {
  it.each([
    [40, 40, 1],
    [-3, -3, 1],
    [0.1, 1, 10],
    [0.07, 7, 100],
    [1.1, 11, 10],
    [-2.675, -2675, 1000],
    [0.000001, 1, 1_000_000],
    [1e-7, 1, 10_000_000],
    [1.5e-7, 3, 20_000_000],
    [-1.5e-7, -3, 20_000_000],
    [0.12345678, 12_345_678, 100_000_000],
    [-0.12345678, -12_345_678, 100_000_000],
    [12.3456789, 123_456_789, 10_000_000],
    [1.00000000001, 100_000_000_001, 100_000_000_000],
    [33.3333333, 333_333_333, 10_000_000],
    [0.5, 1, 2],
    [0.125, 1, 8],
    [1 / 3, 1, 3],
    [-1 / 3, -1, 3],
    [2 / 3, 2, 3],
    [1 / 6, 1, 6],
    [5 / 6, 5, 6],
    [7 + 1 / 3, 22, 3],
    [1.875, 15, 8],
    [45 + 1 / 24, 1081, 24],
  ])('reads %s as %s / %s', (x, n, d) => {
    expectSame(exactOf(x), new Fraction(n, d));
  });

  it('reads a number past the safe integers and one of very many decimals', () => {
    expect(exactOf(1e21)).toStrictEqual({ n: 10n ** 21n, d: 1n });
    expect(exactOf(1.25e-20)).toStrictEqual({ n: 1n, d: 8n * 10n ** 19n });
  });

  it('does not take a sixth or an eighth for a number a little off it', () => {
    expect(exactOf(0.166666666)).toStrictEqual(exact(166_666_666, 1_000_000_000));
  });

  it('reads every decimal of up to six places as typed', () => {
    fc.assert(
      fc.property(fc.integer({ min: -(10 ** 12), max: 10 ** 12 }), fc.integer({ min: 0, max: 6 }), (n, places) => {
        const text = `${n}e-${places}`;
        expectSame(exactOf(Number(text)), new Fraction(n, 10 ** places));
      }),
    );
  });

  it('gives back the very number that it read', () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e12, max: 1e12 }), (x) => {
        // Below this a float itself has only a few bits left.
        fc.pre(x === 0 || Math.abs(x) > 1e-290);
        expect(Math.abs(toNumber(exactOf(x)) - x)).toBeLessThanOrEqual(Math.abs(x) * 1e-15);
      }),
    );
  });

  it.each([Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY])('refuses %s', (x) => {
    expect(() => exactOf(x)).toThrow(`not a finite number: ${x}`);
  });
});

describe('arithmetic agrees with an independent library, in normal form', () => {
  it('adds, takes away and multiplies', () => {
    fc.assert(
      fc.property(anyExact, anyExact, (a, b) => {
        expectSame(add(a, b), other(a).add(other(b)));
        expectSame(sub(a, b), other(a).sub(other(b)));
        expectSame(mul(a, b), other(a).mul(other(b)));
        expectSame(neg(a), other(a).neg());
      }),
    );
  });

  it('divides', () => {
    fc.assert(
      fc.property(anyExact, anyExact, (a, b) => {
        fc.pre(!isZero(b));
        expectSame(div(a, b), other(a).div(other(b)));
      }),
    );
  });

  it('compares', () => {
    fc.assert(
      fc.property(anyExact, anyExact, (a, b) => {
        const order = other(a).compare(other(b));
        expect(compare(a, b)).toBe(Math.sign(order));
        expect(compare(a, a)).toBe(0);
        expect(equal(a, b)).toBe(order === 0);
        expect(equal(a, sub(add(a, b), b))).toBe(true);
        expect(min(a, b)).toBe(order <= 0 ? a : b);
        expect(max(a, b)).toBe(order >= 0 ? a : b);
        expect(sign(a)).toBe(Math.sign(Number(a.n)));
      }),
    );
  });

  it('adds up a list', () => {
    fc.assert(
      fc.property(fc.array(anyExact, { maxLength: 8 }), (list) => {
        expectSame(
          sum(list),
          list.reduce<Fraction>((whole, a) => whole.add(other(a)), new Fraction(0)),
        );
      }),
    );
  });

  it('stays right where a product or a sum passes the safe integers', () => {
    const most = Number.MAX_SAFE_INTEGER;
    expect(add(exact(most), ONE)).toStrictEqual({ n: 2n ** 53n, d: 1n });
    expect(sub(add(exact(most), ONE), ONE)).toStrictEqual({ n: most, d: 1 });
    expect(add(exact(most, 2), exact(1, 3))).toStrictEqual({ n: 3n * BigInt(most) + 2n, d: 6n });
    expect(mul(exact(most), exact(2))).toStrictEqual({ n: 2n * BigInt(most), d: 1n });
    expect(mul(mul(exact(most), exact(2)), exact(1, 2))).toStrictEqual({ n: most, d: 1 });
    expect(div(ONE, exact(-3))).toStrictEqual({ n: -1, d: 3 });
    expect(neg(exact(2n ** 60n))).toStrictEqual({ n: -(2n ** 60n), d: 1n });
    expect(sign(exact(-(2n ** 60n)))).toBe(-1);
    expect(neg(ZERO)).toStrictEqual({ n: 0, d: 1 });
  });

  it('refuses to divide by nought', () => {
    expect(() => div(ONE, ZERO)).toThrow('division by nought');
    expect(() => div(exact(2n ** 60n, 3), ZERO)).toThrow('division by nought');
  });

  it('tells nought, and takes the least and most of several', () => {
    expect([ZERO, ONE, exact(-1)].map(isZero)).toEqual([true, false, false]);
    expect(min(exact(3), exact(1), exact(2))).toStrictEqual(ONE);
    expect(max(exact(1), exact(3), exact(2))).toStrictEqual(exact(3));
    expect(min(exact(3))).toStrictEqual(exact(3));
    expect(equal(exact(1, 2), exact(1, 3))).toBe(false);
  });
});

describe('toNumber', () => {
  it('is within the last bits of the value', () => {
    fc.assert(
      fc.property(anyExact, (a) => {
        const want = other(a).valueOf();
        expect(Math.abs(toNumber(a) - want)).toBeLessThanOrEqual(Math.abs(want) * 1e-15);
      }),
    );
  });

  it('holds where top and bottom are past what a float can hold', () => {
    expect(toNumber(exact(2n * 10n ** 400n + 2n, 10n ** 400n - 7n))).toBeCloseTo(2, 14);
    expect(toNumber(exact(-(10n ** 400n) - 1n, 3n * 10n ** 400n))).toBeCloseTo(-1 / 3, 14);
    expect(toNumber(exact(3n, 10n ** 300n)) / 3e-300).toBeCloseTo(1, 14);
    expect(toNumber(exact(10n ** 300n, 3n)) / (1e300 / 3)).toBeCloseTo(1, 14);
    expect(toNumber(exact(5n, 10n ** 324n))).toBe(5e-324);
  });
});

describe('roundTo', () => {
  it.each([
    ['5/2', 1, 1, 3],
    ['-5/2', 1, 1, -3],
    ['49/20', 1, 10, '5/2'],
    ['12/5', 1, 1, 2],
    ['-12/5', 1, 1, -2],
    ['7', 5, 1, 5],
    ['15/2', 5, 1, 10],
    ['1/3', 1, 100, '33/100'],
    ['0', 1, 10, 0],
  ])('rounds %s to %s/%s', (a, n, d, want) => {
    const value = new Fraction(a);
    expectSame(roundTo(exact(value.s * value.n, value.d), exact(n, d)), new Fraction(want));
  });

  it('rounds a half up that no float can tell from less', () => {
    const half = 10n ** 20n;
    expect(roundTo(exact(2n * half + 1n, 2n), ONE)).toStrictEqual({ n: half + 1n, d: 1n });
    expect(roundTo(exact(half - 1n, 2n * half), ONE)).toStrictEqual(ZERO);
    expect(roundTo(exact(-2n * half - 1n, 2n), ONE)).toStrictEqual({ n: -half - 1n, d: 1n });
  });

  it.each([ZERO, exact(-1)])('refuses a step that is not above nought', (step) => {
    expect(() => roundTo(ONE, step)).toThrow('a rounding step is above nought');
    expect(() => largestRemainder([ONE], ONE, step)).toThrow('a rounding step is above nought');
  });
});

describe('toFixed', () => {
  it.each([
    [exact(1, 3), 2, '0.33'],
    [exact(2, 3), 0, '1'],
    [exact(5, 2), 0, '3'],
    [exact(-5, 2), 0, '-3'],
    [exact(1005, 1000), 2, '1.01'],
    [exact(1, 1000), 2, '0.00'],
    [exact(-1, 1000), 2, '0.00'],
    [exact(-5, 1000), 2, '-0.01'],
    [exact(120), 1, '120.0'],
    [exact(7, 100), 3, '0.070'],
    [exact(10n ** 25n, 3), 1, '3333333333333333333333333.3'],
    [ZERO, 0, '0'],
  ])('writes %o with %s decimals', (a, places, want) => {
    expect(toFixed(a, places)).toBe(want);
  });

  it.each([-1, 0.5, Number.NaN])('refuses %s decimals', (places) => {
    expect(() => toFixed(ONE, places)).toThrow(`not a number of decimals: ${places}`);
  });
});

describe('largestRemainder', () => {
  const tenths = exact(1, 10);

  it('gives the missing step to the largest remainder', () => {
    const parts = [exact(100, 3), exact(200, 3)];
    expect(largestRemainder(parts, exact(100), ONE)).toStrictEqual([exact(33), exact(67)]);
    expect(largestRemainder(parts, exact(100), tenths)).toStrictEqual([exact(333, 10), exact(667, 10)]);
  });

  it('breaks a tie by the larger part, then by place', () => {
    expect(largestRemainder([exact(1, 2), exact(7, 2)], exact(4), ONE)).toStrictEqual([ZERO, exact(4)]);
    expect(largestRemainder([exact(1, 2), exact(1, 2), exact(2)], exact(3), ONE)).toStrictEqual([ONE, ZERO, exact(2)]);
    const thirds = [exact(100, 3), exact(100, 3), exact(100, 3)];
    expect(largestRemainder(thirds, exact(100), ONE)).toStrictEqual([exact(34), exact(33), exact(33)]);
  });

  it('leaves a part alone that is a whole number of steps', () => {
    expect(largestRemainder([exact(40), exact(1, 2)], exact(81, 2), ONE)).toStrictEqual([exact(40), ONE]);
  });

  it('scales parts that do not add up to the total', () => {
    expect(largestRemainder([exact(1), exact(2)], exact(90), ONE)).toStrictEqual([exact(30), exact(60)]);
    expect(largestRemainder([exact(1), exact(1), exact(1)], exact(10), ONE)).toStrictEqual([
      exact(4),
      exact(3),
      exact(3),
    ]);
  });

  it('shares out nought among nothing, and refuses to share anything else', () => {
    expect(largestRemainder([], ZERO, ONE)).toEqual([]);
    expect(largestRemainder([ZERO, ZERO], ZERO, ONE)).toStrictEqual([ZERO, ZERO]);
    expect(() => largestRemainder([], ONE, ONE)).toThrow(RangeError);
    expect(() => largestRemainder([ZERO], ONE, ONE)).toThrow(RangeError);
  });

  it('takes a part below nought down to the step below', () => {
    expect(largestRemainder([exact(-3, 2), exact(7, 2)], exact(2), ONE)).toStrictEqual([exact(-2), exact(4)]);
    const far = exact(-3n * 10n ** 20n - 1n, 3n);
    expect(largestRemainder([far, neg(far)], ZERO, ONE)).toStrictEqual([exact(-(10n ** 20n)), exact(10n ** 20n)]);
    const third = exact(-5n * 10n ** 20n, 3n);
    const up = exact((5n * 10n ** 20n) / 3n + 1n);
    expect(largestRemainder([third, neg(third)], ZERO, ONE)).toStrictEqual([neg(up), up]);
  });

  it('always adds up to the rounded total, each part within a step of its share', () => {
    fc.assert(
      fc.property(
        fc.array(weight, { minLength: 1, maxLength: 7 }),
        fc.constantFrom(ONE, tenths, exact(1, 2)),
        (parts, step) => {
          const total = sum(parts);
          const rounded = largestRemainder(parts, total, step);
          expect(sum(rounded)).toStrictEqual(roundTo(total, step));
          for (const [i, value] of rounded.entries()) {
            const off = sub(value, parts[i] ?? ZERO);
            expect(compare(max(off, neg(off)), step)).toBe(-1);
            expect(div(value, step).d).toBe(1);
          }
        },
      ),
    );
  });
});
