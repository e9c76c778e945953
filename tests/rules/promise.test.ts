import { describe, expect, test } from 'vitest';
import { findIn, rulesIn, saidIn } from './compile.ts';

const SHELF = `product clay "Peregrine clay" lightener
product dev-6 "Cream developer" developer 6%
product milk "Conditioning milk" conditioner
mix none
range neon "Kelp direct" semi
mix none
shades teal, coral
client wren-abbott "Wren Abbott"
`;

/** Visits by month: June, July, … each with its lines. */
const visits = (...each: readonly (readonly string[])[]): string =>
  SHELF + each.map((lines, index) => [`visit 2026-0${index + 6}-16 wren-abbott`, ...lines, ''].join('\n')).join('');

describe('promise-unkept', () => {
  const said = (next: string, bowl: string): string[] =>
    saidIn(visits(['bowl A 40 neon teal', next], [bowl])).filter((text) => text.includes('promise-unkept'));

  test.each([
    ['next 8w A -20%', 'bowl A 32 neon teal'],
    ['next 8w A -20%', 'bowl A 39 neon teal'],
    ['next 8w A +10%', 'bowl A 44 neon teal'],
    ['next 8w A', 'bowl A 60 neon teal'],
    ['next 8w A -20%', 'bowl B 60 neon teal'],
    ['next 8w B -20%', 'bowl B 60 neon teal'],
    ['next 8w A -20%', 'bowl A 60 milk'],
    ['next 8w A -20%', 'bowl A 60 milk + 20 neon teal'],
    ['next 8w A -20%', 'bowl A neon teal'],
    ['next 8w roots', 'bowl A 60 neon teal'],
    ['note nothing promised', 'bowl A 60 neon teal'],
  ])('is silent at %s and %s', (next, bowl) => {
    expect(said(next, bowl)).toEqual([]);
  });

  test.each([
    ['next 8w A -20%', 'bowl A 41 neon teal', 'Bowl A is 41 g; it was 40 g, and 20 % less was promised.'],
    ['next 8w roots, a +10%', 'bowl A 30 neon coral', 'Bowl A is 30 g; it was 40 g, and 10 % more was promised.'],
  ])('fires at %s and %s', (next, bowl, message) => {
    expect(said(next, bowl)).toEqual([`mind promise-unkept: ${message}`]);
  });

  test('holds past a visit without a bowl, and only to the next with one', () => {
    const kept = ['bowl A 40 neon teal', 'next 8w A -20%'];
    expect(rulesIn(visits(kept, ['cut'], ['bowl A 50 neon teal']))).toEqual(['promise-unkept']);
    expect(rulesIn(visits(kept, ['bowl A 30 neon teal'], ['bowl A 50 neon teal']))).toEqual([]);
  });
});

describe('next-in-past', () => {
  test.each(['next 2026-06-17', 'next 6w', 'deposit 50 for 2026-06-17', 'deposit used 50', 'note 2020-01-01'])(
    'is silent at %s',
    (line) => {
      expect(rulesIn(visits([line]))).toEqual([]);
    },
  );

  test.each([
    ['next 2026-06-16 14:00', 'The next visit is on 2026-06-16, and this one is on 2026-06-16.'],
    ['deposit 50 for 2026-01-17', 'The visit that the deposit is for is on 2026-01-17, and this one is on 2026-06-16.'],
  ])('fires at %s', (line, message) => {
    expect(saidIn(visits([line]))).toEqual([`fix next-in-past: ${message}`]);
  });
});

describe('came-too-soon', () => {
  const NEON = 'bowl A 40 neon teal';
  test.each([
    ['on the day', [['next from 2026-07-16'], [NEON]]],
    ['for what leaves no colour', [['next from 2026-10-01'], ['bowl A 40 milk']]],
    ['when all of it stayed in the bowl', [['next from 2026-10-01'], [NEON, 'left A 40']]],
    ['at a date that is no limit', [['next 2026-10-01'], [NEON]]],
    ['at a length of time', [['next 12w'], [NEON]]],
    ['at a limit without a day', [['next from "after the baby"'], [NEON]]],
    ['where a later line lifts it', [['next from 2026-10-01'], ['next 2w'], ['next from 2026-08-01'], [NEON]]],
  ])('is silent %s', (_, each) => {
    expect(rulesIn(visits(...each))).not.toContain('came-too-soon');
  });

  test('fires once, and the limit is over with it', () => {
    expect(rulesIn(visits(['next from 2026-10-01'], ['cut'], [NEON], [NEON]))).toEqual(['came-too-soon']);
  });

  test.each([
    ['next from 2026-10-01', 'fix'],
    ['next from 2026-10-01 foils', 'mind'],
    ['next from 2026-10-01 "back from Lyon"', 'mind'],
  ])('is milder where the line says what for: %s', (next, severity) => {
    const { findings } = findIn(visits([next], [NEON]));
    expect(findings.map((finding) => [finding.rule, finding.severity])).toEqual([['came-too-soon', severity]]);
  });
});
