import { describe, expect, it } from 'vitest';
import { compare, div, type Exact, exact, mul, toFixed, toNumber } from '../../src/text/exact.ts';
import {
  chemicalPercent,
  chemicalVolume,
  LIMIT_READY_FOR_USE,
  MOLAR_MASS,
  MOLAR_VOLUME,
  percentOf,
  readyForUse,
  volOf,
} from '../../src/trade/strength.ts';

/** Litres a mole as the school pages take it. */
const SCHOOL = exact(224, 10);

/** Moles a litre of a solution of so many volumes. */
const molesPerLitre = (vol: Exact): Exact => div(mul(chemicalPercent(vol, SCHOOL), exact(10)), MOLAR_MASS);

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

describe('volumes by chemistry', () => {
  it('10 volumes is 30.3 g a litre (page "What is volume strength of H2O2", 2018, with a molar mass of 34)', () => {
    const gramsPerLitre = toNumber(chemicalPercent(exact(10), SCHOOL)) * 10;
    expect(Math.abs(gramsPerLitre - 30.3) / 30.3).toBeLessThan(0.003);
  });

  it('10 volumes is 0.89 mol a litre and 1.79 normal (same page)', () => {
    const moles = molesPerLitre(exact(10));
    expect(toFixed(moles, 2)).toBe('0.89');
    expect(toFixed(mul(moles, exact(2)), 2)).toBe('1.79');
  });

  it('30 volumes is 2.678 mol a litre and 9.11 g per 100 ml (page "What is volume of hydrogen peroxide", 2010)', () => {
    expect(Math.abs(toNumber(molesPerLitre(exact(30))) - 2.678)).toBeLessThan(0.001);
    expect(toFixed(chemicalPercent(exact(30), SCHOOL), 2)).toBe('9.11');
  });

  it('1 mol a litre is 11.2 volumes (chemistry page "Volume strength")', () => {
    expect(chemicalVolume(div(MOLAR_MASS, exact(10)), SCHOOL)).toStrictEqual(exact(112, 10));
  });

  it('1 normal is 5.6 volumes (chemistry exam notes on volume strength)', () => {
    expect(chemicalVolume(div(MOLAR_MASS, exact(20)), SCHOOL)).toStrictEqual(exact(56, 10));
  });

  it('1 ml of 0.1 N permanganate matches 1.701 mg of peroxide (USP 31, Hydrogen Peroxide Topical Solution, assay)', () => {
    expect(toFixed(div(MOLAR_MASS, exact(20)), 3)).toBe('1.701');
  });

  it('40 volumes in a strict reading is over 12 g per 100 ml, so it is never held against the limit (derived)', () => {
    expect(toFixed(chemicalPercent(exact(40), MOLAR_VOLUME.atmosphere), 4)).toBe('12.1405');
    expect(toFixed(chemicalPercent(exact(40), MOLAR_VOLUME.bar), 4)).toBe('11.9818');
    expect(toFixed(chemicalVolume(exact(12), MOLAR_VOLUME.bar), 3)).toBe('40.061');
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
