import { describe, expect, it } from 'vitest';
import { needsBefore, salonMix } from '../../src/reckon/forecast/forecast.ts';
import { hindsightMix, type MixCase } from '../../src/reckon/forecast/hindsight.ts';
import { compareMix, mixVerdict } from '../../src/reckon/forecast/hindsight-figures.ts';
import { reckonAll } from '../../src/reckon/visit.ts';
import { journalOf } from '../reckon/journal-of.ts';
import { type NeedWorld, simulateNeed } from './need.ts';

const SEEDS = [1, 2, 3];
const SALON = { heads: 25, visitsEach: 8 };
const UNEVEN: Omit<NeedWorld, 'seed' | 'share'> = { ...SALON, noise: 0.06, odd: 0.1, gap: [35, 70], walk: 0 };

const salonOf = (world: NeedWorld) => {
  const simulated = simulateNeed(world);
  const needs = needsBefore(reckonAll(journalOf(simulated.text)), '2100-01-01');
  return { ...simulated, needs, ...hindsightMix(needs) };
};

const compared = (cases: readonly MixCase[]) => {
  const comparison = compareMix(cases);
  if (comparison === undefined) throw new Error('no bowl to compare');
  const [forecast, last] = comparison.figures;
  if (forecast === undefined || last === undefined) throw new Error('no figures');
  return { ...comparison, forecast, last, verdict: mixVerdict(comparison) };
};

describe('heads with a need of their own, seen at uneven intervals, with an odd visit in ten', () => {
  const salons = SEEDS.map((seed) => salonOf({ seed, share: 0.5, ...UNEVEN }));

  it('are read from the notes to the gram, further mixes with them', () => {
    for (const { needs, went } of salons) {
      expect(needs).toHaveLength(SALON.heads * SALON.visitsEach);
      for (const { client, date, used } of needs) expect(used).toBeCloseTo(went.get(`${client} ${date}`) ?? 0, 6);
    }
  });

  it('are forecast nearer to what they truly need than what went on the last time', () => {
    for (const { cases, truth, went, needs } of salons) {
      const errors = cases.map(({ client, date, forecast }) => {
        const true_ = truth.get(`${client} ${date}`) ?? 0;
        const before = needs.findLast((need) => need.client === client && need.date < date);
        const last = went.get(`${client} ${before?.date}`) ?? 0;
        return [Math.abs(forecast.need / true_ - 1), Math.abs(last / true_ - 1)];
      });
      const [forecast = 1, last = 0] = [0, 1].map((at) => errors.reduce((sum, one) => sum + (one[at] ?? 0), 0));
      expect(errors.length).toBeGreaterThan(150);
      expect(forecast / errors.length).toBeLessThan(0.08);
      expect(forecast).toBeLessThan(0.4 * last);
    }
  });

  it('waste half as much as by mixing the same as last time, with no more bowls short than chance explains', () => {
    for (const { cases } of salons) {
      const { forecast, last, verdict, bowls } = compared(cases);
      expect(verdict.waste).toBe(1);
      expect(verdict.short).toBeGreaterThanOrEqual(0);
      expect(forecast.wasted).toBeLessThan(0.55 * last.wasted);
      expect(forecast.short - last.short).toBeLessThan(0.06 * bowls);
      expect(forecast.lacking).toBeLessThan(last.lacking);
    }
  });

  it('lie within the range for about eight bowls of ten', () => {
    for (const { cases } of salons) {
      expect(compared(cases).within).toBeGreaterThan(0.7);
      expect(compared(cases).within).toBeLessThan(0.88);
    }
  });
});

describe('the share of a bowl that grows with the new growth', () => {
  it.each([0.25, 0.5, 1])('%d is learnt from the notes', (share) => {
    for (const seed of SEEDS) expect(salonMix(salonOf({ seed, share, ...UNEVEN }).needs).share).toBe(share);
  });
});

describe('heads whose need walks off between visits', () => {
  it('are no better forecast, and the hindsight does not say that they are', () => {
    const cases = SEEDS.flatMap((seed) =>
      salonOf({ seed, share: 0, ...SALON, noise: 0, odd: 0, gap: [49, 1], walk: 0.25 }).cases.map((one) => ({
        ...one,
        client: `${seed} ${one.client}`,
      })),
    );
    expect(compared(cases).verdict.waste).toBeLessThan(1);
  });
});

describe('the simulation itself', () => {
  it('gives the same notes from the same seed, and others from another', () => {
    const world = { share: 0.5, ...UNEVEN };
    expect(simulateNeed({ seed: 7, ...world })).toEqual(simulateNeed({ seed: 7, ...world }));
    expect(simulateNeed({ seed: 8, ...world }).text).not.toBe(simulateNeed({ seed: 7, ...world }).text);
  });
});
