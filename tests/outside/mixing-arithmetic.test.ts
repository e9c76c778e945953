import { describe, expect, it } from 'vitest';
import { div, type Exact, equal, exact, mul, toFixed, ZERO } from '../../src/text/exact.ts';
import { alligate } from '../../src/trade/alligation.ts';
import { readyForUse } from '../../src/trade/strength.ts';

/** Weights of a lower and a higher strength that make `total` of `target`. */
const blendWeights = (total: Exact, target: Exact, lower: Exact, higher: Exact): { low: Exact; high: Exact } => {
  const { low, high } = alligate(lower, higher, target);
  return { low: mul(total, low), high: mul(total, high) };
};

describe('alligation', () => {
  it('1000 ml of 25 % from 70 % and water is 357.14 + 642.86; the page rounds early to 360 + 640 ("Pharmacy math: alligation")', () => {
    const { low, high } = blendWeights(exact(1000), exact(25), ZERO, exact(70));
    expect([toFixed(high, 2), toFixed(low, 2)]).toEqual(['357.14', '642.86']);
    expect(equal(high, exact(360))).toBe(false);
    expect(equal(low, exact(640))).toBe(false);
    expect(readyForUse([{ weight: exact(360), percent: exact(70) }], exact(1000))).toStrictEqual(exact(252, 10));
  });

  it('960 g of 95 % thinned to 81 % takes 165.93 g of base (practice problem 92 of a pharmacy calculations site)', () => {
    const { low, high } = blendWeights(exact(1), exact(81), ZERO, exact(95));
    expect(toFixed(div(exact(960 * Number(low.n), low.d), high), 2)).toBe('165.93');
  });

  it('20 ml of 70 % from 50 % and 100 % is 12 + 8 (tutoring answer 929842)', () => {
    expect(blendWeights(exact(20), exact(70), exact(50), exact(100))).toStrictEqual({ low: exact(12), high: exact(8) });
  });
});

describe('dilution', () => {
  it('500 ml of 15 % made up to 1500 ml is 5 % (course notes "Allegations")', () => {
    expect(readyForUse([{ weight: exact(500), percent: exact(15) }], exact(1500))).toStrictEqual(exact(5));
  });

  it('4 l of 1:2000 takes 800 ml of 1:400 (course notes "Allegations")', () => {
    expect(blendWeights(exact(4000), exact(1, 2000), ZERO, exact(1, 400)).high).toStrictEqual(exact(800));
  });

  it('30 ml of 0.25 % takes 3.75 ml of 1:50 (course notes "Allegations")', () => {
    expect(blendWeights(exact(30), exact(1, 4), ZERO, exact(2)).high).toStrictEqual(exact(375, 100));
  });

  it('250 ml of 4 % takes 50 ml of 20 % ("Practice dilution problems with solutions")', () => {
    expect(blendWeights(exact(250), exact(4), ZERO, exact(20)).high).toStrictEqual(exact(50));
  });

  it('500 ml of 5 % takes 166.67 ml of 15 % ("Practice dilution problems with solutions")', () => {
    expect(toFixed(blendWeights(exact(500), exact(5), ZERO, exact(15)).high, 2)).toBe('166.67');
  });

  it('100 ml of 20 % makes 1000 ml of 2 % (pharmacy technician exam discussion, question 9)', () => {
    expect(readyForUse([{ weight: exact(100), percent: exact(20) }], exact(1000))).toStrictEqual(exact(2));
    expect(blendWeights(exact(1000), exact(2), ZERO, exact(20)).high).toStrictEqual(exact(100));
  });
});
