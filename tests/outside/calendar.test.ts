import { describe, expect, it } from 'vitest';
import { addDays, dayNumber, daysBetween, daysInMonth, isDate } from '../../src/text/dates.ts';

describe('Gregorian calendar (ISO 8601:2004, 3.2.1, from memory)', () => {
  it.each([
    [2000, true],
    [1900, false],
    [2100, false],
    [2024, true],
    [2026, false],
  ])('a century is a leap year only when 400 divides it: %s is %s', (year, leap) => {
    expect(isDate(`${year}-02-29`)).toBe(leap);
    expect(daysInMonth(year, 2)).toBe(leap ? 29 : 28);
    expect(addDays(`${year}-02-28`, 1)).toBe(leap ? `${year}-02-29` : `${year}-03-01`);
    expect(daysBetween(`${year}-01-01`, `${year + 1}-01-01`)).toBe(leap ? 366 : 365);
  });

  it('the day the Unix Time epoch counts from is day 0 (IEEE Std 1003.1, 4.16, from memory)', () => {
    expect(dayNumber('1970-01-01')).toBe(0);
    expect(dayNumber('2001-09-09')).toBe(Math.floor(1_000_000_000 / 86_400));
  });

  it('400 years are 146097 days (length of the Gregorian cycle)', () => {
    expect(daysBetween('1600-03-01', '2000-03-01')).toBe(146_097);
  });
});
