import { describe, expect, it } from 'vitest';
import { goneBy, liftVisits, SALON_VISITS } from '../../../src/reckon/lift/lift-visits.ts';
import { type Pace, type PaceAsk, paceFor } from '../../../src/reckon/lift/pace.ts';
import { estimateAt, modelPace } from '../../../src/reckon/lift/pace-model.ts';
import type { LiftSeries } from '../../../src/reckon/lift/series.ts';
import { addDays } from '../../../src/text/dates.ts';
import { journalWith, type Look, liftIn, liftWith, visitLines } from './lifted.ts';

/** Looks on the way to yellow at a minute. */
const yellowAt = (minute: number): Look[] => [
  [minute - 20, 'orange'],
  [minute - 10, 'gold'],
  [minute, 'yellow'],
];

const CLAY = journalWith().shelf.get('clay');
if (CLAY === undefined) throw new Error('no clay on the shelf');

const ask = (more: Partial<PaceAsk> = {}): PaceAsk => ({
  client: 'wren-abbott',
  product: CLAY,
  strength: 6,
  stage: 'yellow',
  before: '2026-09-04',
  ...more,
});

const minutes = (all: readonly LiftSeries[], more: Partial<PaceAsk> = {}): number =>
  paceFor(all, ask(more))?.minutes ?? Number.NaN;

/** Ten heads that take forty minutes, twice each. */
const SALON = Array.from({ length: 10 }, (_, head) =>
  ['2026-01-10', '2026-03-14'].map((date) => visitLines(`head-${head}`, date, yellowAt(40))),
).flat();

describe('the pace of a head', () => {
  it('is the salon’s while she is new, her own once she has come often', () => {
    const own = ['2026-01-05', '2026-02-16', '2026-03-30', '2026-05-11', '2026-06-22', '2026-08-03'].map((date) =>
      visitLines('wren-abbott', date, yellowAt(56)),
    );
    const by = own.map((_, times) => minutes(liftWith(...SALON, ...own.slice(0, times))));
    expect(by[0]).toBeCloseTo(40, 0);
    for (const [index, later] of by.slice(1).entries()) expect(later).toBeGreaterThan(by[index] ?? 0);
    expect(by[1]).toBeLessThan(54);
    expect(by.at(-1)).toBeGreaterThan(52);
    expect(by.at(-1)).toBeLessThan(56);
  });

  it('hangs on no visit of the day it serves, or after it', () => {
    const earlier = [...SALON, visitLines('wren-abbott', '2026-05-01', yellowAt(50))];
    const later = ['2026-09-04', '2026-09-05', '2026-12-01'].map((date) =>
      visitLines('wren-abbott', date, yellowAt(25)),
    );
    expect(paceFor(liftWith(...earlier, ...later), ask())).toEqual(paceFor(liftWith(...earlier), ask()));
    expect(minutes(liftWith(...earlier, ...later), { before: '2026-09-05' })).toBeLessThan(
      minutes(liftWith(...earlier)),
    );
  });

  it('tells her last three times that reached the stage, place by place', () => {
    const all = liftWith(
      visitLines('wren-abbott', '2026-01-05', yellowAt(30)),
      visitLines('wren-abbott', '2026-02-16', yellowAt(40)),
      visitLines('wren-abbott', '2026-03-30', yellowAt(42)),
      visitLines('wren-abbott', '2026-05-11', [
        [20, 'orange'],
        [30, 'gold'],
      ]),
      visitLines('wren-abbott', '2026-06-22', yellowAt(44)),
      visitLines('wren-abbott', '2026-06-22', yellowAt(48), { zone: 'back' }),
      visitLines('wren-abbott', '2026-07-20', yellowAt(35), { developer: 'dev-9' }),
    );
    expect(paceFor(all, ask())?.own).toEqual([
      { date: '2026-02-16', from: 40, to: 40 },
      { date: '2026-03-30', from: 42, to: 42 },
      { date: '2026-06-22', from: 44, to: 48 },
    ]);
    expect(paceFor(all, ask({ zone: 'back' }))?.own).toEqual([{ date: '2026-06-22', from: 48, to: 48 }]);
    expect(paceFor(all, ask())?.visits).toEqual({ own: 5, strength: 5, product: 6 });
  });

  it('goes by other strengths when this one is new, and learns what a strength changes', () => {
    const weak = liftWith(...SALON);
    expect(minutes(weak, { strength: 9 })).toBeCloseTo(minutes(weak), 0);
    expect(paceFor(weak, ask({ strength: 9 }))?.visits).toEqual({ own: 0, strength: 0, product: 20 });
    const both = liftWith(
      ...SALON,
      ...Array.from({ length: 8 }, (_, head) =>
        visitLines(`head-${head}`, '2026-05-02', yellowAt(30), { developer: 'dev-9' }),
      ),
    );
    expect(minutes(both, { strength: 9 })).toBeLessThan(minutes(both) - 3);
  });

  it('learns what a place and heat change', () => {
    const all = liftWith(
      ...SALON,
      ...Array.from({ length: 8 }, (_, head) =>
        visitLines(`head-${head}`, '2026-05-02', yellowAt(30), { zone: 'hairline' }),
      ),
      ...Array.from({ length: 8 }, (_, head) =>
        visitLines(`head-${head}`, '2026-06-02', yellowAt(30), { more: 'heat 10:00-10:20 A' }),
      ),
    );
    expect(minutes(all, { zone: 'hairline' })).toBeLessThan(minutes(all, { zone: 'top' }) - 3);
    expect(minutes(all, { zone: 'top', heat: 20 })).toBeLessThan(minutes(all, { zone: 'top' }) - 3);
  });

  it('has a wider span the less there is to go on', () => {
    const wide = ({ low, high }: Pace): number => high / low;
    const spans = [
      liftWith(visitLines('head-0', '2026-01-10', yellowAt(40))),
      liftWith(...SALON),
      liftWith(
        ...SALON,
        ...['2026-02-01', '2026-04-01', '2026-06-01'].map((date) => visitLines('wren-abbott', date, yellowAt(40))),
      ),
    ].map((all) => {
      const pace = paceFor(all, ask());
      return pace === undefined ? 0 : wide(pace);
    });
    expect(spans[0]).toBeGreaterThan(spans[1] ?? 0);
    expect(spans[1]).toBeGreaterThan(spans[2] ?? 0);
    expect(spans[2]).toBeGreaterThan(1);
  });

  it('is not said of a stage nobody reached, past pale yellow, there at every first look, or of an unused product', () => {
    const all = liftWith(...SALON);
    expect(paceFor(all, ask({ stage: 'pale-yellow' }))).toBeUndefined();
    expect(paceFor(all, ask({ stage: 'white' }))).toBeUndefined();
    expect(paceFor(all, ask({ stage: 'red' }))).toBeUndefined();
    expect(paceFor([], ask())).toBeUndefined();
  });

  it('says when to look first: as the line says, and by half of the shortest time', () => {
    expect(paceFor(liftWith(...SALON), ask())?.firstCheck).toBe(10);
    const quick = SALON.map((visit) =>
      visit
        .replaceAll('10:20 A top orange', '10:06 A top orange')
        .replaceAll('10:30 A top gold', '10:10 A top gold')
        .replaceAll('10:40 A', '10:13 A'),
    );
    expect(paceFor(liftWith(...quick), ask())?.firstCheck).toBe(5);
  });
});

describe('the visits an estimate goes by', () => {
  const series = liftIn(
    journalWith(
      ...Array.from({ length: SALON_VISITS + 2 }, (_, day) =>
        visitLines(day === 0 ? 'wren-abbott' : 'jo-marl', addDays('2024-01-01', day), yellowAt(40)),
      ),
    ),
  );

  it('are the salon’s latest and all of hers, oldest first', () => {
    const visits = liftVisits(series, 'clay');
    expect(visits.map(({ date }) => date)).toEqual(visits.map(({ date }) => date).sort());
    expect(goneBy(visits, 'wren-abbott')).toHaveLength(SALON_VISITS + 1);
    expect(goneBy(visits, 'jo-marl')).toHaveLength(SALON_VISITS + 1);
    expect(goneBy(visits, 'someone')).toHaveLength(SALON_VISITS);
    expect(goneBy(visits, 'wren-abbott')[0]?.client).toBe('wren-abbott');
  });

  it('are those with the product, of one day by name', () => {
    const visits = liftVisits(
      liftWith(
        visitLines('b-b', '2026-01-01', yellowAt(40)),
        visitLines('a-a', '2026-01-01', yellowAt(40)),
        visitLines('a-a', '2025-12-01', yellowAt(40)),
        visitLines('a-a', '2026-02-01', yellowAt(40), { product: 'chalk' }),
      ),
      'clay',
    );
    expect(visits.map(({ client, date }) => `${date} ${client}`)).toEqual([
      '2025-12-01 a-a',
      '2026-01-01 a-a',
      '2026-01-01 b-b',
    ]);
  });
});

describe('the model', () => {
  it('is none without readings', () => {
    expect(modelPace([])).toBeUndefined();
  });

  it('reckons with the whole of a bowl where no place is asked about', () => {
    const reading = {
      client: 'a',
      date: '2026-01-01',
      strength: '6 %',
      zone: '',
      heated: 'no heat',
      depth: 9,
      stage: 'a 9',
      minutes: 40,
    };
    const model = modelPace([reading, { ...reading, zone: 'top', minutes: 30 }]);
    const asked = { client: 'z', strength: '6 %', heated: 'no heat' };
    const whole = model && estimateAt(model, { ...asked, zones: [] }, 9);
    expect(whole).toEqual(model && estimateAt(model, { ...asked, zones: [''] }, 9));
    expect(whole?.minutes).toBeGreaterThan((model && estimateAt(model, { ...asked, zones: ['top'] }, 9)?.minutes) ?? 0);
  });
});
