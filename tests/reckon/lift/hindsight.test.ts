import { describe, expect, it } from 'vitest';
import { hindsightLift, type LiftCase } from '../../../src/reckon/lift/hindsight.ts';
import { compareGuesses, verdictOf, withinSpan } from '../../../src/reckon/lift/hindsight-figures.ts';
import { SALON_VISITS } from '../../../src/reckon/lift/lift-visits.ts';
import { paceFor } from '../../../src/reckon/lift/pace.ts';
import { addDays } from '../../../src/text/dates.ts';
import { type Look, liftWith, visitLines } from './lifted.ts';

const yellowAt = (minute: number): Look[] => [
  [minute - 20, 'orange'],
  [minute - 10, 'gold'],
  [minute, 'yellow'],
];

const short = ({ client, date, zone, stage, minutes, estimate, lastTime, lineMiddle }: LiftCase): unknown[] => [
  client,
  date,
  zone,
  stage,
  minutes,
  estimate && Math.round(estimate.minutes),
  lastTime,
  lineMiddle,
];

describe('a hindsight of lift', () => {
  it('estimates each visit from those before it, and sets the two naive guesses beside', () => {
    const all = liftWith(
      visitLines('a-a', '2026-01-01', yellowAt(40)),
      visitLines('b-b', '2026-01-01', yellowAt(40), { product: 'chalk' }),
      visitLines('a-a', '2026-02-01', yellowAt(44)),
      visitLines('a-a', '2026-02-01', yellowAt(50), { zone: 'back' }),
      visitLines('a-a', '2026-03-01', yellowAt(46), { zone: 'back' }),
      visitLines('a-a', '2026-04-01', yellowAt(46), { developer: 'dev-9' }),
    );
    const { cases, basis, untold } = hindsightLift(all);
    expect([basis, untold]).toEqual(['before', 0]);
    expect(cases.map(short)).toEqual([
      ['b-b', '2026-01-01', 'top', 'yellow', 40, undefined, undefined, undefined],
      ['a-a', '2026-01-01', 'top', 'yellow', 40, undefined, undefined, 35],
      ['a-a', '2026-02-01', 'top', 'yellow', 44, 40, 40, 35],
      ['a-a', '2026-02-01', 'back', 'yellow', 50, 40, 40, 35],
      ['a-a', '2026-03-01', 'back', 'yellow', 46, expect.any(Number), 50, 35],
      ['a-a', '2026-04-01', 'top', 'yellow', 46, expect.any(Number), undefined, 35],
    ]);
  });

  it('gives the estimates that were given in daily use', () => {
    const all = liftWith(
      ...['a-a', 'b-b', 'c-c'].flatMap((client, index) =>
        ['2026-01-01', '2026-02-01', '2026-03-01'].map((date, visit) =>
          visitLines(client, date, yellowAt(30 + 5 * index + visit)),
        ),
      ),
    );
    for (const one of hindsightLift(all).cases) {
      const product = all[0]?.product;
      const pace = product && paceFor(all, { ...one, product, strength: 6, before: one.date });
      expect(one.estimate).toEqual(pace && { minutes: pace.minutes, low: pace.low, high: pace.high });
    }
  });

  it('leaves out the visit alone where all others are asked for', () => {
    const all = liftWith(visitLines('a-a', '2026-01-01', yellowAt(30)), visitLines('b-b', '2026-02-01', yellowAt(50)));
    const { cases, basis } = hindsightLift(all, 'others');
    expect(basis).toBe('others');
    expect(cases.map(short)).toEqual([
      ['a-a', '2026-01-01', 'top', 'yellow', 30, 50, undefined, 35],
      ['b-b', '2026-02-01', 'top', 'yellow', 50, 30, undefined, 35],
    ]);
  });

  it('looks further back where the last time did not reach the stage', () => {
    const all = liftWith(
      visitLines('a-a', '2026-01-01', yellowAt(40)),
      visitLines('a-a', '2026-02-01', [
        [10, 'red'],
        [20, 'orange'],
      ]),
      visitLines('b-b', '2026-02-08', yellowAt(31)),
      visitLines('a-a', '2026-03-01', yellowAt(44)),
    );
    expect(hindsightLift(all).cases.at(-1)).toMatchObject({ date: '2026-03-01', lastTime: 40 });
  });

  it('asks every head about the stage that the visits before came to, one taken off before it among them', () => {
    const gold: Look[] = [
      [20, 'orange'],
      [35, 'gold'],
    ];
    const all = liftWith(
      visitLines('a-a', '2026-01-01', yellowAt(40)),
      visitLines('b-b', '2026-01-02', yellowAt(44)),
      visitLines('a-a', '2026-02-01', gold),
      visitLines('c-c', '2026-02-02', gold),
    );
    expect(
      hindsightLift(all).cases.map(({ client, stage, minutes, reached }) => [client, stage, minutes, reached]),
    ).toEqual([
      ['a-a', 'yellow', 40, true],
      ['b-b', 'yellow', 44, true],
      ['a-a', 'yellow', 35, false],
      ['c-c', 'yellow', 35, false],
    ]);
  });

  it('counts apart what was there at the first look', () => {
    const all = liftWith(
      visitLines('a-a', '2026-01-01', [[40, 'yellow']]),
      visitLines('a-a', '2026-03-01', yellowAt(40)),
    );
    const { cases, untold } = hindsightLift(all);
    expect([cases.length, untold]).toEqual([1, 1]);
  });

  it('keeps to the same visits beyond those that an estimate goes by', () => {
    const visits = Array.from({ length: SALON_VISITS + 3 }, (_, index) =>
      visitLines(index % 50 === 0 ? 'a-a' : 'b-b', addDays('2020-01-01', index), yellowAt(40)),
    );
    const all = liftWith(...visits);
    const product = all[0]?.product;
    const last = hindsightLift(all).cases.at(-1);
    const pace = product && last && paceFor(all, { ...last, product, strength: 6, before: last.date });
    expect(last?.estimate).toMatchObject({ minutes: pace?.minutes });
  }, 60_000);
});

const one = (
  client: string,
  guessed: { estimate?: number; last?: number; middle?: number },
  zone = 'top',
): LiftCase => ({
  client,
  date: '2026-01-01',
  bowl: 'A',
  zone,
  product: 'clay',
  stage: 'yellow',
  minutes: 40,
  reached: true,
  estimate:
    guessed.estimate === undefined
      ? undefined
      : { minutes: guessed.estimate, low: guessed.estimate - 3, high: guessed.estimate + 3 },
  lastTime: guessed.last,
  lineMiddle: guessed.middle,
});

describe('the figures of a hindsight', () => {
  it('count a visit once, and only what every guess can say', () => {
    const cases = [
      one('a', { estimate: 42, last: 46 }),
      one('a', { estimate: 44, last: 34 }, 'back'),
      one('b', { estimate: 39, last: 32 }),
      one('c', { estimate: 60 }),
    ];
    expect(compareGuesses(cases, ['estimate', 'last time'])).toEqual({
      cases: 3,
      before: 0,
      visits: 2,
      errors: [
        { guess: 'estimate', mean: 2, bias: 1, within: 1, atLeast: false },
        { guess: 'last time', mean: 7, bias: -4, within: 0, atLeast: false },
      ],
      against: { guess: 'last time', gain: 5, error: 2 },
    });
  });

  it('count what was taken off before as longer, as the others went on from there', () => {
    const taken = { ...one('b', { estimate: 42, last: 46 }), reached: false };
    const cases = [
      one('a', { estimate: 38, last: 46 }),
      taken,
      { ...one('c', { estimate: 42, last: 46 }), minutes: 52 },
    ];
    // 40/38 and 52/42 times the estimate, and more than 40/42 times: the weight of that goes on to both others in halves, so
    // it is out by 42 (40/38 - 1) = 2.2105 or by 42 (52/42 - 1) = 10: by 6.1053, and all by (2 + 6.1053 + 10) / 3.
    const found = compareGuesses(cases, ['estimate', 'last time']);
    expect(found).toMatchObject({ cases: 3, before: 1 });
    expect(found?.errors[0]).toMatchObject({
      guess: 'estimate',
      mean: expect.closeTo(6.0351, 4),
      bias: expect.closeTo(-6.0351, 4),
      within: 0.5,
      atLeast: false,
    });
    // With nobody waited for beyond, it is a lower end.
    expect(compareGuesses([cases[0] as LiftCase, { ...taken, minutes: 60 }], ['estimate'])?.errors[0]).toMatchObject({
      mean: expect.closeTo(10, 9),
      atLeast: true,
    });
  });

  it('hold the estimate against the nearest of the others', () => {
    const cases = [one('a', { estimate: 42, last: 50, middle: 43 }), one('b', { estimate: 42, last: 50, middle: 43 })];
    expect(compareGuesses(cases, ['estimate', 'last time', 'middle of the line'])?.against).toEqual({
      guess: 'middle of the line',
      gain: 1,
      error: 0,
    });
    expect(compareGuesses(cases, ['estimate'])?.against).toBeUndefined();
    expect(compareGuesses([one('a', {})], ['estimate'])).toBeUndefined();
  });

  it('tell a gain from chance beyond two standard errors only', () => {
    const verdict = (gain: number, error: number): string =>
      verdictOf({ cases: 9, before: 0, visits: 9, errors: [], against: { guess: 'last time', gain, error } });
    expect([verdict(2.1, 1), verdict(-2.1, 1), verdict(2, 1), verdict(3, Number.NaN)]).toEqual([
      'nearer',
      'further',
      'no difference shown',
      'no difference shown',
    ]);
    const atLeast = { guess: 'estimate', mean: 9, bias: 0, within: 0, atLeast: true } as const;
    const against = { guess: 'last time', gain: 3, error: 1 } as const;
    expect(verdictOf({ cases: 9, before: 5, visits: 9, errors: [atLeast], against })).toBe('too many taken off');
    expect(verdictOf({ cases: 1, before: 0, visits: 1, errors: [], against: undefined })).toBe('no difference shown');
  });

  it('say how many estimates hold within their span', () => {
    expect(
      withinSpan([
        one('a', { estimate: 42 }),
        one('b', { estimate: 38 }),
        one('c', { estimate: 50 }),
        one('d', { estimate: 30 }),
        one('e', {}),
      ]),
    ).toBe(0.5);
    expect(withinSpan([one('a', {})])).toBeUndefined();
  });
});
