import { expect, test } from 'vitest';
import { sumText, workedText } from '../../src/pages/prep-sums.ts';
import { planVisit } from '../../src/reckon/ahead/plan.ts';
import { SALON_UNTOLD } from '../../src/reckon/forecast/forecast.ts';
import { reckonedOf } from '../reckon/reckoned.ts';

/** The sum of bowl A of the last visit, from visits that mixed so many grams of it and noted nothing left. */
const sumOf = (...grams: number[]): string | undefined => {
  const notes = grams.map((gram, at) => `visit 2026-0${at + 1}-01 wren-abbott\n  bowl A ${gram} neon teal\n`);
  const visits = reckonedOf(notes.join(''));
  const last = visits.at(-1);
  const [bowl] = last === undefined ? [] : planVisit(last, visits, '2026-09-01').bowls;
  return bowl && sumText(bowl);
};

test('as last time is said of what the last bowl held, and of nothing else', () => {
  expect(sumOf(60)).toBe('as last time **60 g**, for no note says what was left');
  expect(sumOf(78, 60, 60)).toBe('as last time **60 g**, for no note says what was left');
  // The middle of 78, 90 and 60.
  expect(sumOf(78, 90, 60)).toBe(
    '**78 g**, the middle of 60–90 g that bowls like it held (60 g last time), for no note says what was left',
  );
});

test('the sum says how often grams made so ran short, or that the notes are too young', () => {
  const notes = ['01', '02'].map(
    (month) => `visit 2026-${month}-01 wren-abbott\n  bowl A 60 neon teal\n  left A 10 binned\n`,
  );
  const visits = reckonedOf(notes.join(''));
  const last = visits.at(-1);
  if (last === undefined) throw new Error('no visit');
  const worked = (there = SALON_UNTOLD.there): string | undefined => {
    const plan = planVisit(last, visits, '2026-09-01', { ...SALON_UNTOLD, there });
    return plan.bowls[0] && workedText(plan.bowls[0], plan);
  };
  // 50 g of each was used, and a tenth to spare is 55.
  expect(worked()).toContain('× 1.1 to spare, 55 g; how often grams made so run short the notes are too young to say');
  expect(worked({ low: 0.9, high: 1.1, mix: 1.02, short: { bowls: 6, of: 62 } })).toContain(
    '× 1.02 to spare, 51 g; of 62 bowls of the salon so far 6 would have run short by grams made so',
  );
});
