import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { add, compare, equal, exact, mul, sum, toFixed } from '../../src/text/exact.ts';
import {
  chemicalPercent,
  chemicalVolume,
  LIMIT_READY_FOR_USE,
  MOLAR_VOLUME,
  NOMINAL_PAIRS,
  percentByWeight,
  percentOf,
  ratioAtLimit,
  readyForUse,
  volOf,
} from '../../src/trade/strength.ts';

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

  it('holds for every pair of the table', () => {
    expect(NOMINAL_PAIRS.map((pair) => pair.percent.n)).toEqual([3, 6, 9, 12]);
    expect(NOMINAL_PAIRS.map((pair) => pair.vol)).toStrictEqual([10, 20, 30, 40].map((vol) => exact(vol)));
    expect(NOMINAL_PAIRS.map((pair) => volOf(pair.percent))).toStrictEqual(NOMINAL_PAIRS.map((pair) => pair.vol));
  });
});

describe('the chemistry of volumes', () => {
  it('comes back to the strength it began with, on either basis', () => {
    fc.assert(
      fc.property(amount, fc.constantFrom(...Object.values(MOLAR_VOLUME)), (percent, molarVolume) =>
        equal(chemicalPercent(chemicalVolume(percent, molarVolume), molarVolume), percent),
      ),
    );
  });

  it('gives a strength by weight through the density', () => {
    expect(
      toFixed(percentByWeight(chemicalPercent(exact(40), MOLAR_VOLUME.atmosphere), exact(10_425, 10_000)), 2),
    ).toBe('11.65');
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

describe('ratioAtLimit', () => {
  it('is the developer that takes one part of the rest to the limit', () => {
    expect(ratioAtLimit(exact(18), exact(12))).toStrictEqual(exact(2));
    fc.assert(
      fc.property(amount, amount, (limit, more) => {
        const percent = add(limit, more);
        const ratio = ratioAtLimit(percent, limit) ?? exact(0);
        expect(readyForUse([{ weight: ratio, percent }], add(ratio, exact(1)))).toStrictEqual(limit);
      }),
    );
  });

  it.each([12, 11])('has no answer for a developer of %s % under a limit of 12', (percent) => {
    expect(ratioAtLimit(exact(percent), exact(12))).toBeUndefined();
  });

  it('is not reached by mixing what the limit allows', () => {
    expect(compare(readyForUse([{ weight: exact(80), percent: exact(12) }], exact(120)), mul(exact(2), exact(4)))).toBe(
      0,
    );
  });
});
