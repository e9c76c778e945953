import { describe, expect, it } from 'vitest';
import { dayText, timeBetween, weekday } from '../../src/pages/days.ts';

describe('weekday', () => {
  it('names the day of a date: ISO 8601-1:2019 counts Monday as day 1, and 1970-01-01 was a Thursday', () => {
    expect(weekday('1970-01-01')).toBe('Thursday');
    expect(weekday('1969-12-31')).toBe('Wednesday');
    expect(weekday('2000-02-29')).toBe('Tuesday');
    expect(dayText('2026-09-04')).toBe('2026-09-04, Friday');
  });

  it('agrees with the calendar of the machine over eight years', () => {
    for (let day = Date.UTC(2020, 0, 1); day < Date.UTC(2028, 0, 1); day += 86_400_000) {
      const date = new Date(day);
      const names = ['Sunday', 'Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday'];
      expect(weekday(date.toISOString().slice(0, 10))).toBe(names[date.getUTCDay()]);
    }
  });
});

describe('timeBetween', () => {
  it('says weeks and days, each in the singular for one', () => {
    expect(timeBetween('2026-09-04', '2026-11-25')).toBe('11 weeks and 5 days');
    expect(timeBetween('2026-11-17', '2026-11-25')).toBe('1 week and 1 day');
    expect(timeBetween('2026-11-11', '2026-11-25')).toBe('2 weeks');
    expect(timeBetween('2026-11-20', '2026-11-25')).toBe('5 days');
    expect(timeBetween('2026-11-25', '2026-11-25')).toBe('the same day');
  });
});
