import { describe, expect, it } from 'vitest';
import { hindsightMix, type MixCase } from '../../../src/reckon/forecast/hindsight.ts';
import { compareMix, mixVerdict } from '../../../src/reckon/forecast/hindsight-figures.ts';
import type { Need } from '../../../src/reckon/forecast/need.ts';

const need = (date: string, used: number, given: Partial<Need> = {}): Need => ({
  client: 'a-a',
  date,
  bowl: 'A',
  product: 'cream',
  zones: [],
  roots: false,
  growth: undefined,
  mixed: used + 10,
  used,
  told: true,
  ...given,
});

describe('a hindsight of grams to mix', () => {
  const needs = [
    need('2026-01-01', 80),
    need('2026-02-01', 90),
    need('2026-02-01', 50, { client: 'b-b' }),
    need('2026-03-01', 100, { told: false }),
    need('2026-04-01', 120),
  ];

  it('forecasts each bowl from those before it, beside what was mixed the last time', () => {
    const { cases, untold, first } = hindsightMix(needs);
    expect([untold, first]).toEqual([1, 2]);
    expect(cases.map(({ date, needed, forecast, lastTime }) => [date, needed, forecast.need, lastTime])).toEqual([
      ['2026-02-01', 90, 80, 90],
      ['2026-04-01', 120, 85, 110],
    ]);
  });

  it('knows of a day what the days before it told, for every bowl of the day', () => {
    const day = [need('2026-01-01', 80), need('2026-02-01', 90), need('2026-02-01', 95, { bowl: 'B' })];
    expect(hindsightMix(day).cases.map(({ bowl, forecast, lastTime }) => [bowl, forecast.need, lastTime])).toEqual([
      ['A', 80, 90],
      ['B', 80, 90],
    ]);
  });

  it('forecasts from all others where asked, and leaves the bowl itself out', () => {
    const { cases } = hindsightMix(needs, 'others');
    expect(cases.map(({ forecast }) => forecast.need)).toEqual([100, 85]);
  });
});

const one = (at: number, needed: number, mix: number, lastTime: number): MixCase => ({
  client: `c-${at}`,
  date: '2026-01-01',
  bowl: 'A',
  product: 'cream',
  needed,
  forecast: { need: mix, low: 80, high: 100, mix, bowls: 1 },
  lastTime,
});

const many = (count: number, caseOf: (at: number) => MixCase): MixCase[] =>
  Array.from({ length: count }, (_, at) => caseOf(at));

const verdict = (cases: readonly MixCase[]): string | undefined => {
  const comparison = compareMix(cases);
  return comparison && mixVerdict(comparison);
};

describe('the figures of a comparison', () => {
  it('are grams wasted, bowls short and grams lacking', () => {
    const found = compareMix([one(0, 100, 110, 90), one(1, 70, 60, 95)]);
    expect(found?.figures).toEqual([
      { guess: 'forecast', wasted: 10, short: 1, lacking: 10 },
      { guess: 'last time', wasted: 25, short: 1, lacking: 10 },
    ]);
    expect([found?.gain, found?.onlyForecastShort, found?.onlyLastShort, found?.within]).toEqual([7.5, 1, 1, 0.5]);
    expect(compareMix([])).toBeUndefined();
  });

  it('say better, worse or a trade only beyond what chance explains', () => {
    expect(verdict(many(20, (at) => one(at, 90, 95 + (at % 2), 110)))).toBe('better');
    expect(verdict(many(20, (at) => one(at, 90, 110, 95 + (at % 2))))).toBe('worse');
    expect(verdict(many(20, (at) => one(at, 90, 80, 110 + (at % 2))))).toBe('trade');
    expect(verdict(many(20, (at) => one(at, 90, 95 + (at % 2), 95 + ((at + 1) % 2))))).toBe('not told apart');
    expect(verdict([one(0, 90, 95, 110)])).toBe('not told apart');
  });
});
