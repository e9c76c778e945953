import { describe, expect, it } from 'vitest';
import type { Pace, PaceAsk } from '../../../src/reckon/lift/pace.ts';
import { sayPace } from '../../../src/reckon/lift/say-pace.ts';
import { itemOf } from './lifted.ts';

const CLAY = itemOf('product clay "Peregrine clay" lightener\ntime 20-50 min, check every 10 min');
const BARE = itemOf('product clay "Peregrine clay" lightener');

const ask = (more: Partial<PaceAsk> = {}): PaceAsk => ({
  client: 'wren-abbott',
  product: CLAY,
  strength: 6,
  stage: 'pale-yellow',
  before: '2026-09-04',
  ...more,
});

const pace = (more: Partial<Pace> = {}): Pace => ({
  stage: 'pale-yellow',
  minutes: 49,
  low: 42.4,
  high: 55.6,
  own: [],
  visits: { own: 0, strength: 14, product: 20 },
  firstCheck: 10,
  ...more,
});

const times = (...minutes: number[]): Pace['own'] =>
  minutes.map((from, index) => ({ date: `2026-0${index + 1}-01`, from, to: from }));

const HAIR = 'Judge by the hair, not the clock.';

describe('the pace in words', () => {
  it('is her last three times, once there are three', () => {
    expect(sayPace(ask(), pace({ own: times(45, 55.2, 48), visits: { own: 3, strength: 14, product: 20 } }))).toBe(
      `About 45 to 55 min to pale yellow the last three times that reached it (2026-01-01 to 2026-03-01); first check at 10. ${HAIR}`,
    );
  });

  it('adds what to reckon with while there are fewer', () => {
    expect(sayPace(ask(), pace({ own: times(45, 45), visits: { own: 2, strength: 14, product: 20 } }))).toBe(
      `About 45 min to pale yellow the last two times that reached it (2026-01-01 to 2026-02-01); reckon with 42 to 56 min (2 own of 14 visits in the salon with Peregrine clay at 6 %); first check at 10. ${HAIR}`,
    );
    expect(sayPace(ask(), pace({ own: times(45), visits: { own: 1, strength: 1, product: 1 } }))).toBe(
      `About 45 min to pale yellow the last time that reached it (2026-01-01); reckon with 42 to 56 min (1 own of 1 visit in the salon with Peregrine clay at 6 %); first check at 10. ${HAIR}`,
    );
  });

  it('is the salon’s for a new head, at other strengths where this one is new', () => {
    expect(sayPace(ask(), pace())).toBe(
      `Reckon with 42 to 56 min to pale yellow (14 visits in the salon with Peregrine clay at 6 %); first check at 10. ${HAIR}`,
    );
    expect(sayPace(ask({ strength: undefined }), pace())).toContain('(14 visits in the salon with Peregrine clay);');
    expect(sayPace(ask(), pace({ visits: { own: 0, strength: 0, product: 20 } }))).toContain(
      '(20 visits in the salon with Peregrine clay, at other strengths);',
    );
  });

  it('is the line’s when no visit tells, and says as much', () => {
    expect(sayPace(ask(), undefined)).toBe(
      `No earlier visit tells the minutes to pale yellow with Peregrine clay; its line says 20 to 50 min; first check at 10. ${HAIR}`,
    );
    expect(sayPace(ask({ product: BARE, stage: 'gold-yellow' }), undefined)).toBe(
      `No earlier visit tells the minutes to gold-yellow with Peregrine clay. ${HAIR}`,
    );
  });
});
