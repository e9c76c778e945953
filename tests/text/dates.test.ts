import { Temporal } from '@js-temporal/polyfill';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  addDays,
  addMonths,
  ageOn,
  clockText,
  dateOf,
  dayNumber,
  daysBetween,
  daysInMonth,
  isDate,
  isMonth,
  monthEnd,
} from '../../src/text/dates.ts';

const FIRST = dayNumber('0000-01-01');
const LAST = dayNumber('9999-12-31');

const anyDay = fc.integer({ min: FIRST, max: LAST });
const anyDate = anyDay.map(dateOf);
const ourDate = fc.integer({ min: dayNumber('1900-01-01'), max: dayNumber('2100-12-31') }).map(dateOf);
const epoch = Temporal.PlainDate.from('1970-01-01');

describe('isDate', () => {
  it.each(['2026-09-04', '0000-01-01', '9999-12-31', '2024-02-29', '2000-02-29'])('takes %s', (text) => {
    expect(isDate(text)).toBe(true);
  });

  it.each([
    '',
    '2026-9-4',
    '2026-09-4',
    '2026-13-01',
    '2026-00-10',
    '2026-04-31',
    '2026-09-00',
    '2026-09-31',
    '2025-02-29',
    '2026/09/04',
    '2026-09/04',
    '2026.09-04',
    '20260904',
    '2026-09-04 ',
    ' 2026-09-0',
    '202a-09-04',
    '-026-09-04',
    '2026-0:-04',
    '2026-09-/4',
    '2026-09-1x',
    '２026-09-04',
  ])('refuses "%s"', (text) => {
    expect(isDate(text)).toBe(false);
  });
});

describe('day numbers', () => {
  it('agree with an independent calendar, there and back', () => {
    fc.assert(
      fc.property(anyDay, (n) => {
        const want = epoch.add({ days: n }).toString();
        const date = dateOf(n);
        expect(date).toBe(want);
        expect(dayNumber(date)).toBe(n);
      }),
      { numRuns: 1000 },
    );
  });

  it.each([
    ['1970-01-01', 0],
    ['1969-12-31', -1],
    ['2000-03-01', 11_017],
    ['0000-01-01', -719_528],
    ['9999-12-31', 2_932_896],
  ])('%s is day %s', (date, n) => {
    expect(dayNumber(date)).toBe(n);
    expect(dateOf(n)).toBe(date);
  });

  it.each([FIRST - 1, LAST + 1, 0.5, Number.NaN])('refuse %s', (n) => {
    expect(() => dateOf(n)).toThrow(`not a day number: ${n}`);
  });

  it('refuse what is not a date', () => {
    expect(() => dayNumber('2026-02-30')).toThrow('not a calendar date: 2026-02-30');
  });
});

describe('sums with dates', () => {
  it('of days agree with an independent calendar', () => {
    fc.assert(
      fc.property(ourDate, ourDate, (a, b) => {
        const days = Temporal.PlainDate.from(a).until(Temporal.PlainDate.from(b)).days;
        expect(daysBetween(a, b)).toBe(days);
        expect(addDays(a, days)).toBe(b);
      }),
    );
  });

  it('of months agree with an independent calendar', () => {
    fc.assert(
      fc.property(ourDate, fc.integer({ min: -600, max: 600 }), (date, months) => {
        expect(addMonths(date, months)).toBe(Temporal.PlainDate.from(date).add({ months }).toString());
      }),
    );
  });

  it.each([
    ['2026-01-31', 12, '2027-01-31'],
    ['2026-08-31', 6, '2027-02-28'],
    ['2028-02-29', 12, '2029-02-28'],
    ['2026-01-15', -1, '2025-12-15'],
    ['2026-12-15', 1, '2027-01-15'],
    ['2026-05-15', 0, '2026-05-15'],
    ['0000-01-15', 0, '0000-01-15'],
    ['9999-12-15', 0, '9999-12-15'],
  ])('%s and %s months is %s', (date, months, want) => {
    expect(addMonths(date, months)).toBe(want);
  });

  it('end with the calendar', () => {
    expect([addMonths('9999-12-15', 1), addMonths('0000-01-15', -1)]).toEqual(['9999-12-31', '0000-01-01']);
    expect([addDays('2026-01-15', 7_000_000), addDays('2026-01-15', -800_000)]).toEqual(['9999-12-31', '0000-01-01']);
  });

  it('do not count parts', () => {
    expect(() => addMonths('2026-01-15', 0.5)).toThrow('not a number of months: 0.5');
    expect(() => addDays('2026-01-15', 0.5)).toThrow(RangeError);
  });

  it('refuse what is not a date', () => {
    expect(() => addMonths('2026-02-30', 1)).toThrow(RangeError);
    expect(() => daysBetween('2026-01-01', 'soon')).toThrow(RangeError);
    expect(() => ageOn('2026-02-30', '2026-01-01')).toThrow(RangeError);
    expect(() => ageOn('2026-01-01', '2026-02-30')).toThrow(RangeError);
  });
});

describe('ageOn', () => {
  it.each([
    ['1988-04-02', '2026-04-01', 37],
    ['1988-04-02', '2026-04-02', 38],
    ['1988-04-02', '2026-03-30', 37],
    ['1988-04-02', '2026-05-01', 38],
    ['2010-09-04', '2026-09-04', 16],
    ['2026-09-04', '2026-09-03', -1],
    ['2008-02-29', '2024-02-28', 15],
    ['2008-02-29', '2024-02-29', 16],
    ['2008-02-29', '2026-02-28', 17],
    ['2008-02-29', '2026-03-01', 18],
  ])('of one born %s on %s is %s', (born, on, want) => {
    expect(ageOn(born, on)).toBe(want);
  });

  it('goes up by one in a year and never down from day to day', () => {
    fc.assert(
      fc.property(ourDate, fc.integer({ min: 0, max: 30_000 }), (born, days) => {
        const [today, tomorrow] = [addDays(born, days), addDays(born, days + 1)];
        const step = ageOn(born, tomorrow) - ageOn(born, today);
        expect([0, 1]).toContain(step);
        expect(ageOn(born, today)).toBe(Math.floor(ageInMonths(born, today) / 12));
      }),
    );
  });
});

function ageInMonths(born: string, on: string): number {
  let months =
    (Number(on.slice(0, 4)) - Number(born.slice(0, 4))) * 12 + Number(on.slice(5, 7)) - Number(born.slice(5, 7));
  if (Number(on.slice(8)) < Number(born.slice(8))) months -= 1;
  return months;
}

describe('months', () => {
  it('end on their last day', () => {
    expect(monthEnd('2026-09')).toBe('2026-09-30');
    expect(monthEnd('2028-02')).toBe('2028-02-29');
    expect(() => monthEnd('2026-13')).toThrow(RangeError);
  });

  it.each([
    ['2026-09', true],
    ['2026-13', false],
    ['2026-00', false],
    ['2026', false],
    ['2026-09-01', false],
  ])('"%s" is a month: %s', (text, want) => {
    expect(isMonth(text)).toBe(want);
  });

  it('have as many days as an independent calendar says', () => {
    fc.assert(
      fc.property(anyDate, (date) => {
        const day = Temporal.PlainDate.from(date);
        expect(daysInMonth(day.year, day.month)).toBe(day.daysInMonth);
      }),
    );
    expect([0, 13, 1.5].map((month) => daysInMonth(2026, month))).toEqual([0, 0, 0]);
  });
});

describe('clockText', () => {
  it.each([
    [875, '14:35'],
    [0, '00:00'],
    [1439, '23:59'],
    [1440, '00:00'],
    [1450, '00:10'],
    [-10, '23:50'],
    [65, '01:05'],
  ])('%s minutes is %s', (minutes, want) => {
    expect(clockText(minutes)).toBe(want);
  });
});
