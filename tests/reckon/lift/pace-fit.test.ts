import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { courseAt, fitPace, PARTS, partsSay, type Row } from '../../../src/reckon/lift/pace-fit.ts';
import { variancesOf } from '../../../src/reckon/lift/pace-variance.ts';

const row = (client: string, depth: number, log: number, more: Partial<Row> = {}): Row => ({
  client,
  depth,
  log,
  date: '2026-09-04',
  strength: '6 %',
  zone: 'top',
  heated: 'no heat',
  stage: `${client} ${depth}`,
  minutes: Math.exp(log),
  weight: 1,
  ...more,
});

const PATIENCE = { client: 2, stage: 1, strength: 4, zone: 4, heated: 4 };
/** Only heads differ, for sums that can be done by hand. */
const HEADS = { ...PATIENCE, stage: 1e9, strength: 1e9, zone: 1e9, heated: 1e9 };

describe('the fit of paces', () => {
  it('keeps n / (n + patience) of what a head differs by, about a course in between', () => {
    const { course, parts } = fitPace([row('a', 7, 3), row('a', 7, 3), row('b', 7, 4), row('b', 7, 4)], HEADS);
    expect(course.get(7)).toBeCloseTo(3.5, 5);
    expect(parts.client.get('a')).toBeCloseTo(-0.5 * (2 / 4), 5);
    expect(parts.client.get('b')).toBeCloseTo(0.5 * (2 / 4), 5);
  });

  it('has a course that never falls with depth', () => {
    const { course } = fitPace([row('a', 9, 3), row('a', 7, 3.4), row('a', 5, 2)], HEADS);
    expect([...course.keys()]).toEqual([5, 7, 9]);
    expect([...course.values()]).toEqual([2, 3.2, 3.2].map((log) => expect.closeTo(log, 5)));
  });

  it('keeps what a head shows at one stage apart from her pace as a whole', () => {
    const rows = [row('a', 7, 3), row('a', 9, 4), row('b', 7, 3), row('b', 9, 3.6)];
    const { parts } = fitPace(rows, { ...HEADS, stage: 0.5 });
    expect(parts.stage.get('a 9')).toBeGreaterThan(0.05);
    expect(parts.stage.get('b 9')).toBeLessThan(-0.05);
  });

  it('is the least of the squares and penalties: no small step in any part is nearer', () => {
    const values = fc.array(
      fc
        .tuple(
          fc.constantFrom('a', 'b', 'c'),
          fc.constantFrom(5, 7, 9),
          fc.constantFrom('6 %', '9 %'),
          fc.integer({ min: 0, max: 20 }),
        )
        .map(([client, depth, strength, tenths]) => row(client, depth, 2 + depth / 10 + tenths / 20, { strength })),
      { minLength: 1, maxLength: 12 },
    );
    fc.assert(
      fc.property(values, (rows) => {
        const fitted = fitPace(rows, PATIENCE);
        const loss = (nudged?: { part: (typeof PARTS)[number]; key: string; by: number }): number => {
          const said = { ...fitted.parts };
          if (nudged !== undefined) {
            const own = new Map(said[nudged.part]);
            own.set(nudged.key, (own.get(nudged.key) ?? 0) + nudged.by);
            said[nudged.part] = own;
          }
          const squares = rows.reduce(
            (sum, one) => sum + one.weight * (one.log - (fitted.course.get(one.depth) ?? 0) - partsSay(said, one)) ** 2,
            0,
          );
          return PARTS.reduce(
            (sum, part) => sum + PATIENCE[part] * [...said[part].values()].reduce((all, value) => all + value ** 2, 0),
            squares,
          );
        };
        const least = loss();
        for (const part of PARTS)
          for (const key of fitted.parts[part].keys())
            for (const by of [-0.01, 0.01]) expect(loss({ part, key, by })).toBeGreaterThanOrEqual(least - 1e-9);
      }),
    );
  });

  it('says what is left of every row', () => {
    const { course, parts, rest } = fitPace([row('a', 7, 3), row('b', 7, 4)], PATIENCE);
    for (const { row: one, left } of rest)
      expect(left).toBeCloseTo(one.log - (course.get(7) ?? 0) - partsSay(parts, one), 9);
  });

  it('says nothing of a head or place it does not know, and leaves one part out where asked', () => {
    const { parts } = fitPace([row('a', 7, 3), row('b', 7, 4)], HEADS);
    const known = { client: 'a', stage: 'a 7', strength: '6 %', zone: 'top', heated: 'no heat' };
    expect(partsSay(parts, { ...known, client: 'z' })).toBeCloseTo(0, 5);
    expect(partsSay(parts, known, 'client')).toBeCloseTo(0, 5);
    expect(partsSay(parts, known)).toBeLessThan(-0.1);
  });
});

describe('the course at a depth', () => {
  const course = new Map([
    [5, 2],
    [7, 3],
  ]);

  it('is straight between its points and not known outside them', () => {
    expect([4, 5, 6, 7, 8].map((depth) => courseAt(course, depth))).toEqual([undefined, 2, 2.5, 3, undefined]);
    expect(courseAt(new Map(), 5)).toBeUndefined();
  });
});

describe('the variances', () => {
  it('are the usual ones while there is nothing to go on', () => {
    expect(variancesOf([{ client: 'a', left: 0 }])).toEqual({
      noise: expect.closeTo(0.0225, 9),
      spread: expect.closeTo(0.04, 9),
    });
  });

  it('are those of the analysis of variance, averaged with the usual by degrees of freedom', () => {
    // Within: 2 × 0.02 = 0.04 by 2 degrees; between: 4 × 0.25 = 1 by 1 degree, so (1 − 0.02) / 2 less what is averaged in.
    const places = [0.4, 0.6, -0.4, -0.6].map((left, index) => ({ client: index < 2 ? 'a' : 'b', left }));
    const noise = (0.04 + 6 * 0.0225) / 8;
    expect(variancesOf(places)).toEqual({
      noise: expect.closeTo(noise, 9),
      spread: expect.closeTo(((1 - noise) / 2 + 4 * 0.04) / 5, 9),
    });
  });

  it('take heads that differ less than chance as not differing', () => {
    const places = [1, -1, 1, -1].map((left, index) => ({ client: index < 2 ? 'a' : 'b', left }));
    expect(variancesOf(places).spread).toBeCloseTo(0.16 / 5, 9);
  });
});
