import { describe, expect, it } from 'vitest';
import { readingsOf } from '../../../src/reckon/lift/reading.ts';
import { type Look, liftWith, visitLines } from './lifted.ts';

const taught = (...looks: Look[]): string[] =>
  liftWith(visitLines('wren-abbott', '2026-09-04', looks))
    .flatMap(readingsOf)
    .map(({ depth, minutes }) => `${depth}: ${minutes}`);

describe('what a series teaches of pace', () => {
  it('is the minutes to each whole stage passed between its looks', () => {
    expect(taught([10, 'orange'], [20, 'gold'], [30, 'yellow'])).toEqual(['7: 20', '9: 30']);
    expect(taught([10, 'red'], [30, 'gold'])).toEqual(['4: 15', '5: 20', '7: 30']);
  });

  it('counts a half step only where the lift ended on it', () => {
    expect(taught([10, 'orange'], [20, 'gold'], [30, 'gold-yellow'])).toEqual(['7: 20', '8: 30']);
  });

  it('is not what was there at the first look, unless nothing else was seen', () => {
    expect(taught([10, 'gold'], [20, 'gold'])).toEqual(['7: 10']);
    expect(taught([40, 'yellow'])).toEqual(['9: 40']);
    expect(taught([0, 'yellow'])).toEqual([]);
  });

  it('has no key of a strength that the bowl does not say', () => {
    const [series] = liftWith(
      visitLines('wren-abbott', '2026-09-04', [[20, 'gold']]).replace('60 dev-6', 'dev-6 + dev-9'),
    );
    expect(series && readingsOf(series)).toMatchObject([{ strength: '', depth: 7 }]);
  });

  it('carries the strength, the place and heat as keys', () => {
    const [series] = liftWith(
      visitLines('wren-abbott', '2026-09-04', [[20, 'gold']], { more: 'heat 10:05-10:10 A', developer: 'dev-9' }),
    );
    expect(series && readingsOf(series)).toEqual([
      {
        client: 'wren-abbott',
        date: '2026-09-04',
        strength: '9 %',
        zone: 'top',
        heated: 'heat',
        depth: 7,
        stage: 'wren-abbott 7',
        minutes: 20,
      },
    ]);
  });
});
