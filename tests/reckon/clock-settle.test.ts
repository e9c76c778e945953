import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dayBegins, doubtOf, endOfSpan, minuteOf, pastMidnight, settleClock } from '../../src/reckon/clock/settle.ts';

const HOURS = { from: 540, to: 1140 };
const clock = (minutes: number, other?: number) => ({ minutes, at: 0, ...(other !== undefined && { other }) });

describe('settleClock', () => {
  it('takes the reading inside the hours', () => {
    expect(settleClock(clock(155, 875), HOURS)).toEqual({ minute: 875, doubt: undefined });
    expect(settleClock(clock(590, 1310), HOURS)).toEqual({ minute: 590, doubt: undefined });
  });

  it('counts opening and closing as inside', () => {
    expect(settleClock(clock(540, 1260), HOURS).minute).toBe(540);
    expect(settleClock(clock(420, 1140), HOURS)).toEqual({ minute: 1140, doubt: undefined });
  });

  it('doubts a time that the hours hold twice or not at all', () => {
    expect(settleClock(clock(580, 1300), { from: 0, to: 1440 })).toEqual({
      minute: 580,
      doubt: { kind: 'either-half-day', read: 580, other: 1300 },
    });
    expect(settleClock(clock(430, 1150), HOURS)).toEqual({
      minute: 1150,
      doubt: { kind: 'outside-hours', read: 1150, other: 430 },
    });
  });

  it('takes a time as written where there is one reading, or no hours', () => {
    expect(settleClock(clock(120), HOURS)).toEqual({ minute: 120, doubt: undefined });
    expect(settleClock(clock(155, 875), undefined)).toEqual({ minute: 155, doubt: undefined });
    expect(settleClock({ after: 25, at: 0 }, HOURS)).toEqual({ minute: undefined, doubt: undefined });
  });

  it('reads every time as one of its readings, in doubt or not', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 719 }),
        fc.integer({ min: 0, max: 719 }),
        fc.integer({ min: 720, max: 1439 }),
        (minutes, from, to) => {
          const both = [minutes, minutes + 720];
          const hours = { from, to };
          const minute = minuteOf(clock(minutes, minutes + 720), hours);
          expect(both).toContain(minute);
          const inside = both.filter((one) => one >= from && one <= to);
          expect(doubtOf(clock(minutes, minutes + 720), hours) === undefined).toBe(inside.length === 1);
          if (inside.length === 1) expect(minute).toBe(inside[0]);
        },
      ),
    );
  });
});

describe('midnight', () => {
  it('begins the work after the longest pause, when that is a night', () => {
    expect(dayBegins([])).toBeUndefined();
    expect(dayBegins([600, 540])).toBe(540);
    expect(dayBegins([10, 1430])).toBe(1430);
    expect(dayBegins([600, 1380])).toBe(600);
    expect(dayBegins([0, 1080])).toBe(0);
    expect(dayBegins([0, 1081])).toBe(1081);
    expect(dayBegins([1200, 0, 600])).toBe(0);
  });

  it('moves what is more than twelve hours before to the next day', () => {
    expect(pastMidnight(10, 1430)).toBe(1450);
    expect(pastMidnight(710, 1430)).toBe(710);
    expect(pastMidnight(709, 1430)).toBe(2149);
    expect(pastMidnight(10, undefined)).toBe(10);
    expect(endOfSpan(1430, 10)).toBe(1450);
    expect(endOfSpan(900, 890)).toBe(890);
  });
});
