import { describe, expect, it } from 'vitest';
import { div, exact, mul, toFixed } from '../../src/text/exact.ts';
import { toGrams, UNITS } from '../../src/trade/units.ts';

const us = UNITS['floz-us'].factor;
const uk = UNITS['floz-uk'].factor;

describe('fluid ounces', () => {
  it('a US one is 29.5735295625 ml (1/128 of a gallon of 231 cubic inches)', () => {
    expect(toFixed(us, 10)).toBe('29.5735295625');
    const cubicInch = exact(254 ** 3, 1_000_000);
    expect(us).toStrictEqual(div(mul(exact(231), cubicInch), exact(128)));
  });

  it('an imperial one is 28.4130625 ml (1/160 of a gallon of 4.54609 l, Units of Measurement Regulations 1995)', () => {
    expect(toFixed(uk, 7)).toBe('28.4130625');
    expect(uk).toStrictEqual(div(exact(454_609, 100), exact(160)));
  });

  it('sixteen US ones are a pint of 473.176473 ml, twenty imperial ones a pint of 568.26125 ml (same definitions)', () => {
    expect(toFixed(mul(us, exact(16)), 6)).toBe('473.176473');
    expect(mul(uk, exact(20))).toStrictEqual(exact(56_826_125, 100_000));
  });

  it('differ by the ratio 1.0408427 (derived from the definitions)', () => {
    expect(toFixed(div(us, uk), 7)).toBe('1.0408427');
  });

  it('an ounce by weight is 28.349523125 g (1/16 of a pound of 0.45359237 kg, from memory)', () => {
    expect(toGrams(exact(16), 'oz-wt')).toStrictEqual(exact(45_359_237, 100_000));
  });
});
