import { describe, expect, it } from 'vitest';
import { minutesTo } from '../../src/reckon/lift/curve.ts';
import { hindsightLift } from '../../src/reckon/lift/hindsight.ts';
import { compareGuesses, type Guess, verdictOf, withinSpan } from '../../src/reckon/lift/hindsight-figures.ts';
import { paceFor } from '../../src/reckon/lift/pace.ts';
import { type LiftSeries, liftOf } from '../../src/reckon/lift/series.ts';
import { reckonAll } from '../../src/reckon/visit.ts';
import { journalOf } from '../reckon/journal-of.ts';
import { minutesAtPace, type PaceWorld, simulatePace } from './pace.ts';

const GUESSES: readonly Guess[] = ['estimate', 'last time', 'middle of the line'];

/** A journal of thirty heads, six visits each, and the lift read out of it. */
const salonOf = (world: Pick<PaceWorld, 'seed' | 'spread' | 'noise' | 'walk' | 'offBy'>) => {
  const simulated = simulatePace({ heads: 30, visitsEach: 6, ...world });
  const journal = journalOf(simulated.text);
  const series: LiftSeries[] = [...reckonAll(journal).values()].flat().flatMap(liftOf);
  return { ...simulated, series, shelf: journal.shelf };
};

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

const SEEDS = [1, 2, 3, 4];
const FEW_SEEDS = [1, 2];
const STEADY = { spread: 0.25, noise: 0.12, walk: 0 };

describe('heads with a pace of their own, and visits that differ a little', () => {
  const salons = SEEDS.map((seed) => salonOf({ seed, ...STEADY }));
  const cases = salons.flatMap(({ series }, salon) =>
    hindsightLift(series).cases.map((one) => ({ ...one, client: `${salon} ${one.client}` })),
  );

  it('are read from the notes to within a look either way', () => {
    for (const { series, visits } of salons) {
      const errors = series.flatMap(({ client, date, curve }) => {
        const [read, truth] = [minutesTo(curve, 'yellow'), visits.get(`${client} ${date}`)];
        return read === undefined || truth === undefined ? [] : [read.minutes - truth];
      });
      expect(errors.length).toBeGreaterThan(150);
      expect(Math.abs(mean(errors))).toBeLessThan(2);
      expect(mean(errors.map(Math.abs))).toBeLessThan(3);
    }
  });

  it('are estimated nearer to their true pace than by the last time or the product’s line', () => {
    for (const { series, heads, shelf } of salons) {
      const clay = shelf.get('clay');
      if (clay === undefined) throw new Error('no clay on the shelf');
      const errors = [...heads].flatMap(([client, truth]) => {
        const pace = paceFor(series, { client, product: clay, strength: 6, stage: 'yellow', before: '2030-01-01' });
        const last = pace?.own.at(-1);
        return pace && last ? [[pace.minutes, last.to, 35].map((guess) => Math.abs(guess - truth))] : [];
      });
      const [estimate = 0, last = 0, line = 0] = [0, 1, 2].map((guess) => mean(errors.map((own) => own[guess] ?? 0)));
      expect(errors.length).toBeGreaterThan(25);
      expect(estimate).toBeLessThan(0.75 * last);
      expect(estimate).toBeLessThan(0.5 * line);
    }
  });

  it('come out of the hindsight ahead of both guesses, told from chance over the salons together', () => {
    const comparison = compareGuesses(cases, GUESSES);
    expect(comparison?.visits).toBeGreaterThan(550);
    expect(comparison && verdictOf(comparison)).toBe('nearer');
    expect(comparison?.against?.guess).toBe('last time');
  });

  it('lie within the span for about eight visits of ten', () => {
    const held = withinSpan(cases);
    expect(held).toBeGreaterThan(0.74);
    expect(held).toBeLessThan(0.86);
  });
});

describe('heads that are all alike', () => {
  it('are taken as the salon, so that the last time is further out', () => {
    for (const seed of FEW_SEEDS) {
      const comparison = compareGuesses(
        hindsightLift(salonOf({ seed, spread: 0, noise: 0.12, walk: 0 }).series).cases,
        ['estimate', 'last time'],
      );
      expect(comparison && verdictOf(comparison)).toBe('nearer');
    }
  });
});

describe('heads whose pace walks off between visits', () => {
  it('are better guessed by the last time, and the hindsight says so', () => {
    for (const seed of FEW_SEEDS) {
      const comparison = compareGuesses(
        hindsightLift(salonOf({ seed, spread: 0.25, noise: 0.02, walk: 0.3 }).series).cases,
        GUESSES,
      );
      expect(comparison?.against?.guess).toBe('last time');
      expect(comparison && verdictOf(comparison)).not.toBe('nearer');
    }
  });
});

describe('heads that are taken off by the clock', () => {
  /** What the hindsight says of the estimate, and what is true of it, in minutes. */
  const scored = (world: Pick<PaceWorld, 'spread' | 'noise' | 'walk' | 'offBy'>) => {
    const told = FEW_SEEDS.flatMap((seed) => {
      const { series, visits } = salonOf({ seed, ...world });
      return hindsightLift(series).cases.flatMap((one) => {
        const toYellow = visits.get(`${one.client} ${one.date}`);
        if (one.estimate === undefined || toYellow === undefined) return [];
        const truth = Math.abs(one.estimate.minutes - minutesAtPace(one.stage, toYellow));
        return [{ one: { ...one, client: `${seed} ${one.client}` }, truth }];
      });
    });
    const cases = told.map(({ one }) => one);
    const reached = cases.filter((one) => one.reached);
    return {
      says: compareGuesses(cases, ['estimate'])?.errors[0]?.mean ?? 0,
      // As a score of those alone that came to the stage has it.
      ofReached: mean(reached.map(({ minutes, estimate }) => Math.abs(minutes - (estimate?.minutes ?? 0)))),
      truth: mean(told.map(({ truth }) => truth)),
      off: 1 - reached.length / cases.length,
    };
  };

  it('count, so that where the truth is worse the score is worse, by about as much', () => {
    const worlds = [0.05, 0.15, 0.25, 0.35].map((noise) => scored({ spread: 0.15, noise, walk: 0, offBy: 44 }));
    for (const [at, { says, truth, off }] of worlds.entries()) {
      expect(Math.abs(says / truth - 1)).toBeLessThan(0.25);
      if (at > 1) expect(off).toBeGreaterThan(0.15);
      const before = worlds[at - 1];
      if (before === undefined) continue;
      expect(truth).toBeGreaterThan(before.truth);
      expect(says).toBeGreaterThan(before.says);
    }
  });

  it('are not hidden by those that came to the stage', () => {
    const { says, ofReached, truth } = scored({ spread: 0.3, noise: 0.3, walk: 0, offBy: 44 });
    expect(ofReached).toBeLessThan(0.75 * truth);
    expect(Math.abs(says - truth)).toBeLessThan(0.6 * Math.abs(ofReached - truth));
  });
});

describe('the simulation itself', () => {
  it('gives the same journal from the same seed, and another from another', () => {
    const world = { heads: 3, visitsEach: 2, ...STEADY };
    expect(simulatePace({ seed: 7, ...world })).toEqual(simulatePace({ seed: 7, ...world }));
    expect(simulatePace({ seed: 7, ...world }).text).not.toBe(simulatePace({ seed: 8, ...world }).text);
  });
});
