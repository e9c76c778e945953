import { describe, expect, it } from 'vitest';
import { compare, type Exact, exact, toFixed } from '../../src/text/exact.ts';
import { LIMIT_READY_FOR_USE, percentOf, readyForUse, volOf } from '../../src/trade/strength.ts';

/** Strength on the head of one part of colour to so many parts of developer. */
function onHead(developer: Exact, percent: number): Exact {
  return readyForUse(
    [{ weight: developer, percent: exact(percent) }],
    exact(Number(developer.n) + Number(developer.d), developer.d),
  );
}

describe('nominal strengths', () => {
  it('12 % is 40 volumes (Regulation (EC) 1223/2009, Annex III, entry 12, as replaced by Regulation (EU) 2019/831)', () => {
    expect(volOf(exact(12))).toStrictEqual(exact(40));
    expect(compare(percentOf(exact(40)), LIMIT_READY_FOR_USE)).toBe(0);
  });

  it('6 % is 20 volumes (label of hydrogen peroxide solution 6 % BP)', () => {
    expect(volOf(exact(6))).toStrictEqual(exact(20));
  });

  it('9 % is 30 volumes (composition of a 9 %, 30 vols medicine, copied summary of product characteristics)', () => {
    expect(volOf(exact(9))).toStrictEqual(exact(30));
  });
});

describe('strength on the head', () => {
  it.each([
    [exact(1), 6, '3.0'],
    [exact(3, 2), 6, '3.6'],
    [exact(3, 2), 9, '5.4'],
    [exact(1), 12, '6.0'],
    [exact(2), 12, '8.0'],
    [exact(3), 6, '4.5'],
  ])('of 1:%o with %s % lies in 3 to 8 % (Practical Modern Hair Science, chapter 4)', (developer, percent, want) => {
    const strength = onHead(developer, percent);
    expect(toFixed(strength, 1)).toBe(want);
    expect(compare(strength, exact(3))).not.toBe(-1);
    expect(compare(strength, exact(8))).not.toBe(1);
  });

  it.each([1, 3])(
    'of 1:%s, an end of the exposure scenario, keeps 12 % developer under the limit (SCCP, opinion on toluene-2,5-diamine, 2007)',
    (parts) => {
      expect(compare(onHead(exact(parts), 12), LIMIT_READY_FOR_USE)).toBe(-1);
    },
  );
});
