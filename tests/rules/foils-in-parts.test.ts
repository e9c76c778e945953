import { describe, expect, it } from 'vitest';
import { findIn } from './compile.ts';

const NOTES = `product dev-6 "Cream developer" developer 6%
product clay "Peregrine clay" lightener
  mix 1:2
  time 20-50 min from first-on
range gloss "Gloss" demi
  mix none
client wren-abbott "Wren Abbott"
visit 2026-09-04 14:00 wren-abbott
  bowl A 40 clay + 80 dev-6
  place A nape weave x12 off-scalp 1cm foil
`;

const found = (lines: string): string[] =>
  findIn(NOTES + lines)
    .findings.filter(({ rule }) =>
      ['past-time', 'under-time', 'no-off', 'toner-on-lightener', 'no-check'].includes(rule),
    )
    .map(({ severity, rule, message }) => `${severity} ${rule}: ${message}`);

const ON = '  on 14:20-14:32 A nape\n  check 14:45 A nape gold\n';

describe('foils that come off in parts, by their own clocks', () => {
  it('finds the seventh of twelve past its time, though all were on for less than that from the last', () => {
    expect(found(`${ON}  off 15:10 A nape x6\n  off 15:20 A nape x6\n`)).toEqual([
      'fix past-time: Bowl A nape was on for 54 min, section by section, 4 min past its time.',
    ]);
    expect(found(`${ON}  off 15:10 A nape x6\n  off 15:30 A nape\n`)).toEqual([
      'stop past-time: Bowl A nape was on for 64 min, section by section, 14 min past its time.',
    ]);
  });

  it('is silent where each was within its time, as the last line alone would not be', () => {
    expect(found(`${ON}  off 15:05 A nape x6\n  off 15:15 A nape x6\n`)).toEqual([]);
    expect(found(`${ON}  off 15:15 A nape\n`)).toEqual([
      'fix past-time: Bowl A nape was on for 55 min from first on, 5 min past its time.',
    ]);
  });

  it('lets what is off be toned while the rest is in', () => {
    const toned = '  bowl T 30 gloss 9/1\n  on 15:07 T nape\n  off 15:15 T\n';
    expect(found(`${ON}  off 15:05 A nape x6\n${toned}  off 15:15 A nape\n`)).toEqual([]);
  });
});
