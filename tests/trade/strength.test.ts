import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compare, equal, exact, sum } from '../../src/text/exact.ts';
import { LIMIT_READY_FOR_USE, percentOf, readyForUse, volOf } from '../../src/trade/strength.ts';

const amount = fc.integer({ min: 1, max: 10_000 }).map((n) => exact(n, 10));

describe('the nominal pairing', () => {
  it('is exact both ways, so 40 volumes never pass 12 %', () => {
    expect(volOf(exact(12))).toStrictEqual(exact(40));
    expect(percentOf(exact(40))).toStrictEqual(LIMIT_READY_FOR_USE);
    expect(compare(percentOf(exact(40)), LIMIT_READY_FOR_USE)).toBe(0);
    expect(volOf(exact(19, 10))).toStrictEqual(exact(19, 3));
    expect(percentOf(exact(7))).toStrictEqual(exact(21, 10));
  });

  it('comes back to the strength it began with', () => {
    fc.assert(fc.property(amount, (percent) => equal(percentOf(volOf(percent)), percent)));
  });
});

describe('readyForUse', () => {
  it('counts what brings no peroxide in the total', () => {
    expect(readyForUse([{ weight: exact(60), percent: exact(6) }], exact(100))).toStrictEqual(exact(36, 10));
    expect(readyForUse([], exact(100))).toStrictEqual(exact(0));
  });

  it('lies between the weakest and the strongest when all parts are peroxide', () => {
    fc.assert(
      fc.property(fc.array(fc.record({ weight: amount, percent: amount }), { minLength: 1, maxLength: 5 }), (parts) => {
        const mixed = readyForUse(parts, sum(parts.map((part) => part.weight)));
        expect(parts.some((part) => compare(part.percent, mixed) <= 0)).toBe(true);
        expect(parts.some((part) => compare(part.percent, mixed) >= 0)).toBe(true);
      }),
    );
  });

  it('has no answer for an empty bowl', () => {
    expect(() => readyForUse([], exact(0))).toThrow(RangeError);
  });
});
