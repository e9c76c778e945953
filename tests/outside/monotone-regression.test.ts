import fc from 'fast-check';
import quadprog from 'quadprog';
import { expect, test } from 'vitest';
import { MIDDLE_PULL, monotoneFit, type Observation } from '../../src/reckon/lift/monotone.ts';

/** A table of noughts that counts from 1, as the solver wants it. */
const table = (rows: number, columns: number): number[][] =>
  Array.from({ length: rows + 1 }, () => new Array<number>(columns + 1).fill(0));

/**
 * The same fit as a quadratic programme: a value y for each x and, for every span, a point z within it; least is the sum
 * of w(y − z)² + MIDDLE_PULL · w(y − middle)², with y never falling.
 */
const byProgramme = (observations: readonly Observation[]): number[] => {
  const places = [...new Set(observations.map(({ x }) => x))].sort((a, b) => a - b);
  const spans = observations.filter(({ low, high }) => low < high);
  const size = places.length + spans.length;
  const conditions = places.length - 1 + 2 * spans.length;
  const curvature = table(size, size);
  const pull = new Array<number>(size + 1).fill(0);
  const sides = table(size, conditions);
  const bounds = new Array<number>(conditions + 1).fill(0);
  const add = (row: number, column: number, value: number): void => {
    const cells = curvature[row] ?? [];
    cells[column] = (cells[column] ?? 0) + value;
  };
  const side = (variable: number, condition: number, value: number): void => {
    const cells = sides[variable] ?? [];
    cells[condition] = value;
  };
  for (const one of observations) {
    const { x, low, high, weight = 1 } = one;
    const y = places.indexOf(x) + 1;
    const middle = (low + high) / 2;
    add(y, y, 2 * weight * (1 + MIDDLE_PULL));
    pull[y] = (pull[y] ?? 0) + 2 * weight * MIDDLE_PULL * middle;
    const span = spans.indexOf(one);
    if (span < 0) pull[y] += 2 * weight * low;
    else {
      const z = places.length + span + 1;
      add(z, z, 2 * weight);
      add(y, z, -2 * weight);
      add(z, y, -2 * weight);
      const condition = places.length + 2 * span;
      side(z, condition, 1);
      bounds[condition] = low;
      side(z, condition + 1, -1);
      bounds[condition + 1] = -high;
    }
  }
  for (let place = 1; place < places.length; place++) {
    side(place, place, -1);
    side(place + 1, place, 1);
  }
  const { solution, message } = quadprog.solveQP(curvature, pull, sides, bounds);
  expect(message).toBe('');
  return observations.toSorted((a, b) => a.x - b.x).map(({ x }) => solution[places.indexOf(x) + 1] ?? Number.NaN);
};

const depth = fc.integer({ min: 2, max: 20 }).map((halves) => halves / 2);
const observation: fc.Arbitrary<Observation> = fc
  .record({
    x: fc.integer({ min: 0, max: 40 }),
    from: depth,
    to: depth,
    span: fc.boolean(),
    weight: fc.integer({ min: 1, max: 4 }),
  })
  .map(({ x, from, to, span, weight }) => ({
    x,
    low: Math.min(from, span ? to : from),
    high: Math.max(from, span ? to : from),
    weight,
  }));

test('the monotone fit is the least of the quadratic programme, by the solver quadprog 1.6 (Goldfarb and Idnani, Mathematical Programming 27, 1983), on 400 random courses', () => {
  fc.assert(
    fc.property(fc.array(observation, { minLength: 1, maxLength: 12 }), (observations) => {
      const ours = monotoneFit(observations).map(({ value }) => value);
      const theirs = byProgramme(observations);
      for (const [index, value] of ours.entries()) expect(value).toBeCloseTo(theirs[index] ?? Number.NaN, 5);
    }),
    { numRuns: 400, seed: 1955 },
  );
});
