import { describe, expect, it } from 'vitest';
import { type Exact, exact, toFixed, toNumber } from '../../src/text/exact.ts';
import { PUBLISHED_RATES, regrowth, SURVEY_RANGE } from '../../src/trade/growth.ts';

function meanOf(key: string): Exact {
  const rate = PUBLISHED_RATES.find((published) => published.key === key);
  if (rate === undefined) throw new Error(`no published rate ${key}`);
  return rate.mean;
}

describe('regrowth', () => {
  it('at 367 micrometres a day is 15.414 mm in six weeks (International Journal of Dermatology 44 (Suppl. 1), 2005)', () => {
    expect(regrowth(42, meanOf('2005-367'))).toStrictEqual(exact(15_414, 1000));
  });

  it('at 411 micrometres a day is 11.508 mm in four weeks (International Journal of Dermatology 44 (Suppl. 1), 2005)', () => {
    expect(regrowth(28, meanOf('2005-411'))).toStrictEqual(exact(11_508, 1000));
  });

  it('at 256 micrometres a day is 93.5 mm in a year (British Journal of Dermatology, August 2001)', () => {
    expect(toFixed(regrowth(365.25, meanOf('2001-256')), 1)).toBe('93.5');
  });

  it('spreads 44, 55, 50, 56 and 53 micrometres about the means (the same papers of 2001 and 2005)', () => {
    expect(PUBLISHED_RATES.map((rate) => toNumber(rate.spread))).toEqual([0.044, 0.055, 0.05, 0.056, 0.053]);
  });

  it('runs from 0.8 to 1.3 cm a month over 21 countries (European Journal of Dermatology 26(2), 2016)', () => {
    expect(SURVEY_RANGE).toStrictEqual({ low: exact(8), high: exact(13) });
  });
});
