import { Temporal } from '@js-temporal/polyfill';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dayAfter } from '../../src/reckon/when.ts';
import { addLength, dateOf, dayNumber, daysBetween } from '../../src/text/dates.ts';

const ourDate = fc.integer({ min: dayNumber('1900-01-01'), max: dayNumber('2100-12-31') }).map(dateOf);

describe('months are calendar months', () => {
  test.each([
    ['2026-03-25', 6, '2026-09-25'],
    ['2026-08-31', 6, '2027-02-28'],
    ['2027-08-31', 6, '2028-02-29'],
    ['2026-12-31', 2, '2027-02-28'],
    ['2026-01-31', 12, '2027-01-31'],
  ])('%s and %i months is %s', (from, months, to) => {
    expect(addLength(from, months, 'mo')).toBe(to);
    expect(dayAfter(from, { value: months, unit: 'mo', at: 0 })).toBe(to);
  });

  test('agree with an independent calendar, as do weeks and days', () => {
    fc.assert(
      fc.property(ourDate, fc.integer({ min: 0, max: 60 }), (date, count) => {
        const day = Temporal.PlainDate.from(date);
        expect(addLength(date, count, 'mo')).toBe(day.add({ months: count }).toString());
        expect(addLength(date, count, 'w')).toBe(day.add({ weeks: count }).toString());
        expect(addLength(date, count, 'd')).toBe(day.add({ days: count }).toString());
      }),
    );
  });

  test('a part of a month is its share of the days that follow', () => {
    expect(addLength('2026-01-31', 1.5, 'mo')).toBe('2026-03-14');
    expect(daysBetween('2026-04-01', addLength('2026-04-01', 0.5, 'mo'))).toBe(15);
  });
});
