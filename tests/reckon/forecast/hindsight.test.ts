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
  price: undefined,
  currency: undefined,
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
  price: 5,
  currency: 'GBP',
});

const many = (count: number, caseOf: (at: number) => MixCase): MixCase[] =>
  Array.from({ length: count }, (_, at) => caseOf(at));

/** Waste, then what runs short: 1 where the forecast is better. */
const verdict = (cases: readonly MixCase[]): (number | undefined)[] => {
  const comparison = compareMix(cases);
  const found = comparison && mixVerdict(comparison);
  return [found?.waste, found?.short];
};

describe('the figures of a comparison', () => {
  it('are grams wasted, bowls short and grams lacking', () => {
    const found = compareMix([one(0, 100, 110, 90), one(1, 70, 60, 95)]);
    expect(found?.figures).toEqual([
      { guess: 'forecast', wasted: 10, cost: 50, short: 1, lacking: 10 },
      { guess: 'last time', wasted: 25, cost: 125, short: 1, lacking: 10 },
    ]);
    expect([found?.gain, found?.onlyForecastShort, found?.onlyLastShort, found?.within]).toEqual([7.5, 1, 1, 0.5]);
    expect(compareMix([])).toBeUndefined();
  });

  it('are worth what has a price, in the one currency there is', () => {
    const bare = { ...one(2, 70, 90, 95), price: undefined };
    const found = compareMix([one(0, 100, 110, 90), bare]);
    expect([found?.currency, found?.unpriced, found?.figures[0]?.cost]).toEqual(['GBP', 1, 50]);
    expect(compareMix([one(0, 100, 110, 90), { ...one(1, 9, 9, 9), currency: 'EUR' }])?.currency).toBeUndefined();
  });

  it('say better in one or the other only beyond what chance explains', () => {
    expect(verdict(many(20, (at) => one(at, 90, 95 + (at % 2), 110)))).toEqual([1, 0]);
    expect(verdict(many(20, (at) => one(at, 90, 110, 95 + (at % 2))))).toEqual([-1, 0]);
    expect(verdict(many(20, (at) => one(at, 90, 80, 110 + (at % 2))))).toEqual([1, -1]);
    expect(verdict(many(20, (at) => one(at, 90, 95 + (at % 2), 95 + ((at + 1) % 2))))).toEqual([0, 0]);
    expect(verdict([one(0, 90, 95, 110)])).toEqual([0, 0]);
  });
});
