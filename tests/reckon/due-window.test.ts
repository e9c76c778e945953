import { describe, expect, it } from 'vitest';
import { plannedIn, promised, standingOn, waitWindow } from '../../src/reckon/ahead/due-window.ts';
import { sayRhythm, sayWindow } from '../../src/reckon/ahead/say-window.ts';
import type { Duration } from '../../src/records/schema/values.ts';
import { reckonedOf } from './reckoned.ts';

const wait = (value: number, unit: Duration['unit'], to?: number): Duration => ({
  value,
  unit,
  at: 0,
  ...(to !== undefined && { to }),
});

const day = (date: string) => ({ first: date, last: date });

describe('the days that a wait comes to', () => {
  it('are counted in weeks and days on the calendar, both ends of a range', () => {
    expect(waitWindow('2026-09-04', wait(8, 'w'))).toEqual(day('2026-10-30'));
    expect(waitWindow('2026-09-04', wait(6, 'w', 8))).toEqual({ first: '2026-10-16', last: '2026-10-30' });
    expect(waitWindow('2026-09-04', wait(10, 'd'))).toEqual(day('2026-09-14'));
  });

  it('keep the last day of a month that is shorter', () => {
    expect(waitWindow('2026-11-30', wait(3, 'mo'))).toEqual(day('2027-02-28'));
  });

  it('are none on the day itself, and go no further than the calendar', () => {
    expect(waitWindow('2026-09-04', wait(4, 'h'))).toBeUndefined();
    expect(waitWindow('2026-09-04', wait(1_000_000, 'w'))).toEqual({ first: '9999-12-31', last: '9999-12-31' });
  });
});

describe('how a day stands to a window', () => {
  it('is due until its last day, then overdue, and away after half a year', () => {
    const window = { first: '2026-10-16', last: '2026-10-30' };
    expect(standingOn(window, '2026-10-30')).toEqual({ status: 'due', late: 0 });
    expect(standingOn(window, '2026-10-31')).toEqual({ status: 'overdue', late: 1 });
    expect(standingOn(window, '2027-04-30')).toEqual({ status: 'overdue', late: 182 });
    expect(standingOn(window, '2027-05-01')).toEqual({ status: 'away', late: 183 });
  });

  it('is never overdue without a last day', () => {
    expect(standingOn({ first: '2026-10-16', last: undefined }, '2026-11-15')).toEqual({ status: 'due', late: 30 });
  });
});

describe('a window in words', () => {
  it('is its two days, its one day with the time, or the day from which', () => {
    expect(sayWindow({ first: '2026-10-16', last: '2026-10-30' })).toBe('2026-10-16 to 2026-10-30');
    expect(sayWindow({ ...day('2026-10-30'), time: 840 })).toBe('2026-10-30 14:00');
    expect(sayWindow(day('2026-10-30'))).toBe('2026-10-30');
    expect(sayWindow({ first: '2026-10-16', last: undefined })).toBe('from 2026-10-16');
  });
});

describe('the visit whose `next` says what to do', () => {
  const planned = (more: string): string | undefined =>
    plannedIn(reckonedOf(`visit 2026-09-04 wren-abbott\n  next 8w A -20%\n${more}`))?.date;

  it('is the last with one, until colour goes on', () => {
    expect(planned('')).toBe('2026-09-04');
    expect(planned('visit 2026-09-18 wren-abbott\n  cut\n')).toBe('2026-09-04');
    expect(planned('visit 2026-09-18 wren-abbott\n  next 6w\n')).toBe('2026-09-18');
    expect(planned('visit 2026-09-18 wren-abbott\n  bowl A 40 cream 7/0 + 60 dev-6\n')).toBeUndefined();
    expect(plannedIn([])).toBeUndefined();
  });
});

describe('a redo', () => {
  const VISIT = 'visit 2026-09-04 wren-abbott\n  bowl A 40 clay + 80 dev-6\n  next 8w A -20%\n';
  const REDO = 'visit 2026-09-11 wren-abbott\n  redo 2026-09-04\n  bowl A 40 cream 7/0 + 60 dev-6\n';

  it('without a `next` leaves that of the visit it puts right standing, from that visit’s own day', () => {
    const visits = reckonedOf(VISIT + REDO);
    // Eight weeks from 4 September.
    expect(promised(visits)).toMatchObject({ first: '2026-10-30', last: '2026-10-30' });
    expect(plannedIn(visits)?.date).toBe('2026-09-04');
  });

  it('with a `next` goes by it, and any other visit with colour ends the promise', () => {
    expect(promised(reckonedOf(`${VISIT}${REDO}  next 6w\n`))).toMatchObject({ first: '2026-10-23' });
    expect(promised(reckonedOf(VISIT + REDO.replace(/ {2}redo.*\n/, '')))).toBeUndefined();
  });
});

describe('a rhythm in words', () => {
  it('names the service and its days', () => {
    expect(sayRhythm({ service: 'roots', days: 42, since: '2026-09-04' })).toBe('roots every 42 days');
  });
});
