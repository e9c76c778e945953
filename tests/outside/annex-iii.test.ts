import { describe, expect, it } from 'vitest';
import { compare, div, exact, mul, toFixed } from '../../src/text/exact.ts';
import { LAW } from '../../src/trade/law.ts';

const limitsOf = (substance: string) => LAW.eu.limits.filter((entry) => entry.substance === substance);

/** What the table says of a substance, as per cent by use. */
const percents = (substance: string): string[] => limitsOf(substance).map((entry) => toFixed(entry.percent, 2));

describe('limits of Regulation (EC) 1223/2009, Annex III', () => {
  it.each([
    ['hydrogen peroxide', ['12.00', '4.00', '2.00'], 'entry 12: hair, skin, nails'],
    ['toluene-2,5-diamine', ['2.00', '3.60'], 'entry 9a: free base, sulfate'],
    ['m-aminophenol', ['1.20'], 'entry 217, Directive 2011/59/EU'],
    ['4-amino-3-nitrophenol', ['1.50'], 'entry 215, Directive 2011/59/EU'],
    ['2,7-naphthalenediol', ['1.00'], 'entry 216, Directive 2011/59/EU'],
    ['4-chlororesorcinol', ['2.50'], 'entry 254, Directive 2012/21/EU'],
    ['hydroxyethyl-p-phenylenediamine', ['2.00'], 'entry 256, Directive 2012/21/EU'],
    ['N-substituted phenylenediamines', ['3.00'], 'entry 8'],
    ['ammonia', ['6.00'], 'entry 4'],
    ['thioglycolic acid', ['8.00', '11.00', '2.00'], 'entry 2a: general, professional, rinsed off'],
  ])('%s: %j %% (%s)', (substance, want) => {
    expect(percents(substance)).toEqual(want);
  });

  it('resorcinol is 1.25 % in oxidative dye and 0.5 % only in lotions and shampoos (entry 22, SCCS/1619/20)', () => {
    const [dye, lotion] = limitsOf('resorcinol');
    expect([dye?.use, dye && toFixed(dye.percent, 2)]).toEqual(['oxidative dye, mixed, on hair', '1.25']);
    expect([lotion?.use, lotion && toFixed(lotion.percent, 2)]).toEqual(['lotions and shampoos', '0.50']);
  });

  it('p-phenylenediamine is 2 % as free base on lashes (entry 8b, agency copy of Annex III)', () => {
    expect(percents('p-phenylenediamine')).toEqual(['2.00', '2.00']);
    expect(limitsOf('p-phenylenediamine').map((entry) => [entry.source.slice(-2), entry.use])).toEqual([
      ['8a', 'oxidative dye, mixed, on hair'],
      ['8b', 'oxidative dye for lashes, professional'],
    ]);
  });

  it('each say what use they bind (entries 12, 2a and 4)', () => {
    expect(limitsOf('hydrogen peroxide').map((entry) => entry.use)).toEqual(['hair', 'skin', 'nails']);
    expect(limitsOf('thioglycolic acid').map((entry) => entry.use)).toEqual([
      'waving and straightening',
      'waving and straightening, professional',
      'hair products rinsed off',
    ]);
    expect(limitsOf('ammonia').map((entry) => entry.use)).toEqual(['any']);
  });

  it('base and sulfate of entry 9a are one limit twice: 2.0 % × 220.25/122.17 is 3.6 % (derived from molar masses)', () => {
    const [base, sulfate] = limitsOf('toluene-2,5-diamine').map((entry) => entry.percent);
    if (base === undefined || sulfate === undefined) throw new Error('entry 9a has two limits');
    const reckoned = mul(base, div(exact(22_025), exact(12_217)));
    expect(toFixed(reckoned, 1)).toBe(toFixed(sulfate, 1));
    expect(compare(reckoned, sulfate)).toBe(1);
  });

  it('label warnings of oxidative dyes name persons under 16: 15 is under, 16 is not', () => {
    expect([15, 16].map((age) => age < LAW.eu.youngest)).toEqual([true, false]);
  });
});
