import { describe, expect, it } from 'vitest';
import { compare, exact, toFixed } from '../../src/text/exact.ts';
import { DEFAULT_GROWTH, isPlausibleGrowth, regrowth } from '../../src/trade/growth.ts';

const micrometres = (aDay: number) => exact(aDay, 1000);

describe('regrowth', () => {
  it('at 367 micrometres a day is 15.414 mm in six weeks (International Journal of Dermatology 44 (Suppl. 1), 2005)', () => {
    expect(regrowth(42, micrometres(367))).toStrictEqual(exact(15_414, 1000));
  });

  it('at 411 micrometres a day is 11.508 mm in four weeks (International Journal of Dermatology 44 (Suppl. 1), 2005)', () => {
    expect(regrowth(28, micrometres(411))).toStrictEqual(exact(11_508, 1000));
  });

  it('at 256 micrometres a day is 93.5 mm in a year (British Journal of Dermatology, August 2001)', () => {
    expect(toFixed(regrowth(365.25, micrometres(256)), 1)).toBe('93.5');
  });

  it('at a mean of either paper is taken as read, and so at two deviations above the fastest (the same, 2001 and 2005)', () => {
    for (const mean of [256, 396, 280, 367, 411, 411 + 2 * 53])
      expect(isPlausibleGrowth(micrometres(mean)), `${mean}`).toBe(true);
    expect(isPlausibleGrowth(micrometres(411 + 2 * 53 + 1))).toBe(false);
  });

  it('is taken within 0.8 to 1.3 cm a month until it is measured (European Journal of Dermatology 26(2), 2016)', () => {
    const month = regrowth(30, DEFAULT_GROWTH);
    expect(compare(exact(8), month)).toBe(-1);
    expect(compare(month, exact(13))).toBe(-1);
  });
});
