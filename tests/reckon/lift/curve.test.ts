import { describe, expect, it } from 'vitest';
import { AIMS, aimDepth } from '../../../src/reckon/lift/aims.ts';
import { minutesTo, minutesToDepth } from '../../../src/reckon/lift/curve.ts';
import { curveOf } from './lifted.ts';

const RISE = curveOf([10, 'orange'], [20, 'gold'], [30, 'yellow']);

describe('the stages to aim at', () => {
  it('end at pale yellow', () => {
    expect(AIMS).toHaveLength(17);
    expect([AIMS[0]?.stage, AIMS.at(-1)?.stage]).toEqual(['black-brown', 'pale-yellow']);
    expect(aimDepth('pale-yellow')).toBe(10);
    expect(aimDepth('white')).toBeUndefined();
    expect(aimDepth('yellow-white')).toBe(10);
    expect(aimDepth('beige')).toBeUndefined();
  });
});

describe('minutes to a stage', () => {
  it('are read from the curve, with the looks on either side', () => {
    expect(minutesTo(RISE, 'gold')).toEqual({ minutes: 20, early: 10, late: 20, byFirst: false });
    expect(minutesTo(RISE, 'gold-yellow')).toEqual({ minutes: 25, early: 20, late: 30, byFirst: false });
  });

  it('are an upper end when the stage was there at the first look', () => {
    expect(minutesTo(RISE, 'red')).toEqual({ minutes: 10, early: 0, late: 10, byFirst: true });
  });

  it('are not known for what was never reached, is past pale yellow, or has no looks', () => {
    expect(minutesTo(RISE, 'pale-yellow')).toBeUndefined();
    expect(minutesTo(curveOf([10, 'white']), 'white')).toBeUndefined();
    expect(minutesTo([], 'gold')).toBeUndefined();
  });

  it('count a depth as reached within half a tenth, as it is shown', () => {
    expect(minutesToDepth(RISE, 9.04)).toMatchObject({ minutes: 30, late: 30 });
    expect(minutesToDepth(RISE, 9.06)).toBeUndefined();
  });

  it('are open to the far side when no look settles them', () => {
    const wide = curveOf([10, 'orange'], [20, 'gold to pale-yellow']);
    expect(minutesTo(wide, 'gold-yellow')).toEqual({
      minutes: expect.closeTo(18.57, 2),
      early: 10,
      late: undefined,
      byFirst: false,
    });
  });

  it('hear every look at one minute', () => {
    const both = curveOf([10, 'red'], [20, 'orange to gold'], [20, 'yellow']);
    expect(both.map(({ minute, depth, least, most }) => [minute, depth, least, most])).toEqual([
      [10, 3, 3, 3],
      [20, expect.closeTo(8, 2), 5, 9],
    ]);
  });

  it('have a band that never falls and holds the curve, whatever the looks', () => {
    const fallen = curveOf([10, 'gold'], [20, 'orange'], [30, 'red to yellow'], [40, 'orange-gold']);
    for (const [index, { depth, least, most }] of fallen.entries()) {
      expect(least).toBeLessThanOrEqual(depth);
      expect(most).toBeGreaterThanOrEqual(depth);
      expect(least).toBeGreaterThanOrEqual(fallen[index - 1]?.least ?? 0);
      expect(most).toBeGreaterThanOrEqual(fallen[index - 1]?.most ?? 0);
    }
  });
});
