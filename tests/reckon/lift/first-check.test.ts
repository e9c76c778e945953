import { describe, expect, it } from 'vitest';
import { firstCheckAt, lineOf, middleOfLine } from '../../../src/reckon/lift/first-check.ts';
import { itemOf } from './lifted.ts';

const clay = (...lines: string[]): ReturnType<typeof itemOf> =>
  itemOf(`product clay "Peregrine clay" lightener\n${lines.join('\n')}`);

describe('the time line of a product', () => {
  it('is the one without a condition, else the first', () => {
    expect(lineOf(clay('time 20-35 min if on-scalp', 'time 20-50 min'))).toEqual({ from: 20, to: 50 });
    expect(lineOf(clay('time 20-35 min if on-scalp', 'time 10-15 min if grey 50%'))).toEqual({ from: 20, to: 35 });
    expect(lineOf(clay('time 1 h'))).toEqual({ from: 60, to: 60 });
  });

  it('is none without a line, or for a time that is not minutes', () => {
    expect(lineOf(clay())).toBeUndefined();
    expect(lineOf(clay('time 1 mo'))).toBeUndefined();
    expect(lineOf(clay('time 1-2 mo'))).toBeUndefined();
  });

  it('has a middle', () => {
    expect(middleOfLine(clay('time 20-50 min'))).toBe(35);
    expect(middleOfLine(clay())).toBeUndefined();
  });
});

describe('the first check', () => {
  it('comes as often as the line says', () => {
    expect(firstCheckAt(clay('time 20-50 min, check every 10 min'))).toBe(10);
    expect(firstCheckAt(clay('time 20-50 min, check every 10 min'), 60)).toBe(10);
  });

  it('comes by half of the shortest time, in whole fives where there are any', () => {
    expect(firstCheckAt(clay('time 20-50 min, check every 10 min'), 15)).toBe(5);
    expect(firstCheckAt(clay(), 43)).toBe(20);
    expect(firstCheckAt(clay(), 7)).toBe(3);
    expect(firstCheckAt(clay(), 1)).toBe(1);
  });

  it('is not known without a line or a time', () => {
    expect(firstCheckAt(clay('time 20-50 min'))).toBeUndefined();
  });
});
