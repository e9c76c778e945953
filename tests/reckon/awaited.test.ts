import { describe, expect, it } from 'vitest';
import { awaitedAfter, awaitedOn, backAfter } from '../../src/reckon/ahead/awaited.ts';
import { reckonedOf } from './reckoned.ts';

const awaited = (next: string, on: string, more = ''): string | undefined =>
  awaitedOn(reckonedOf(`visit 2026-09-04 wren-abbott\n  cut\n  ${next}\n${more}`), on)?.first;

describe('when a client is awaited', () => {
  it('is the date of next, or the near end of its wait', () => {
    expect(awaited('next 2026-10-30 10:00 foils', '2026-10-01')).toBe('2026-10-30');
    expect(awaited('next 6-8w', '2026-10-01')).toBe('2026-10-16');
    expect(awaited('next 1mo', '2026-10-01')).toBe('2026-10-04');
    expect(awaited('next from 2026-12-02', '2026-10-01')).toBe('2026-12-02');
  });

  it('is the day itself where a visit is noted for it, whatever next says', () => {
    const noted = 'visit 2026-09-20 2.30 wren-abbott\n  aim tone';
    expect(awaited('next 8w', '2026-09-20', noted)).toBe('2026-09-20');
    expect(awaited('next 8w', '2026-09-04', '')).toBe('2026-09-04');
  });

  it('is the day of a visit noted ahead, by what is known before it', () => {
    expect(awaited('next 8w', '2026-09-10', 'visit 2026-09-20 wren-abbott\n  aim tone')).toBe('2026-09-20');
  });

  it('goes by an earlier next while no colour has gone on since', () => {
    expect(awaited('next 8w', '2026-09-21', 'visit 2026-09-20 wren-abbott\n  cut')).toBe('2026-10-30');
    const coloured = 'visit 2026-09-20 wren-abbott\n  bowl A 40 cream 7/0 + 60 dev-6';
    expect(awaited('next 8w', '2026-09-21', coloured)).toBeUndefined();
  });

  it('is not known without a next or a rhythm', () => {
    expect(awaited('note away', '2026-10-01')).toBeUndefined();
  });

  it('is no later than the calendar', () => {
    expect(awaited('next 99999mo', '2026-10-01')).toBe('9999-12-31');
  });
});

describe('the day that brings her back once more', () => {
  const back = (notes: string): string | undefined => {
    const found = awaitedAfter(reckonedOf(notes), '2026-11-01');
    return found && backAfter(found, '2026-12-01');
  };

  it('is by the same wait, or by her rhythm', () => {
    expect(back('visit 2026-10-07 wren-abbott\n  next 8w')).toBe('2027-01-26');
    const dates = ['2026-06-03', '2026-07-15', '2026-08-26'];
    expect(back(dates.map((date) => `visit ${date} wren-abbott\n  bowl A 40 cream 7/0 + 60 dev-6`).join('\n'))).toBe(
      '2027-01-12',
    );
  });

  it('is none after a day that was named alone', () => {
    expect(back('visit 2026-10-07 wren-abbott\n  next 2026-12-01')).toBeUndefined();
  });
});
