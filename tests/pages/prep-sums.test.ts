import { expect, test } from 'vitest';
import { sumText } from '../../src/pages/prep-sums.ts';
import { planVisit } from '../../src/reckon/plan.ts';
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
