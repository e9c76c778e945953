import { describe, expect, it } from 'vitest';
import { measuredGrowth } from '../../src/reckon/client/history.ts';
import { toNumber } from '../../src/text/exact.ts';
import { lastOf, reckonedOf } from './reckoned.ts';

const root = (date: string, more = ''): string =>
  `visit ${date} wren-abbott\nbowl A 30 cream 7/0 + 45 dev-6\non 10:00 A roots\noff 10:40 A\n${more}\n`;
const gloss = (date: string): string =>
  `visit ${date} wren-abbott\nbowl T 20 toner 9/1 + 20 gloss-act\non 10:00 T lengths\noff 10:10 T\n`;
const look = (date: string, more = ''): string => `visit ${date} wren-abbott\n${more}\n`;

describe('days since earlier work', () => {
  it('counts from the last colour and from the last roots', () => {
    const visit = lastOf(root('2026-01-01') + gloss('2026-02-01') + look('2026-02-05') + look('2026-02-26'));
    expect(visit).toMatchObject({ daysSinceColour: 25, daysSinceRoots: 56 });
  });

  it('knows none on a first visit, and takes none of the same day', () => {
    expect(lastOf(root('2026-01-01'))).toMatchObject({ daysSinceColour: undefined, daysSinceRoots: undefined });
    expect(lastOf(`${root('2026-01-01')}visit 2026-01-01 16:00 wren-abbott\n`)).toMatchObject({
      daysSinceColour: undefined,
      daysSinceRoots: undefined,
    });
  });
});

describe('growth', () => {
  const growth = (notes: string) => {
    const { expected, rate, own, measured } = lastOf(notes).growth;
    return {
      expected: expected && toNumber(expected),
      rate: toNumber(rate),
      own,
      measured: measured && toNumber(measured),
    };
  };

  it('is expected at the salon’s rate until the client’s own is measured', () => {
    expect(growth(root('2026-01-01') + look('2026-02-26'))).toEqual({
      expected: 19.6,
      rate: 0.35,
      own: false,
      measured: undefined,
    });
    expect(growth(look('2026-02-26', 'regrowth 2cm'))).toEqual({
      expected: undefined,
      rate: 0.35,
      own: false,
      measured: 20,
    });
  });

  it('is the client’s own from earlier visits only', () => {
    const first = root('2026-01-01') + root('2026-02-20', 'regrowth 2cm');
    expect(growth(first)).toMatchObject({ own: false, measured: 20, expected: 17.5 });
    expect(growth(first + look('2026-03-02'))).toEqual({ expected: 4, rate: 0.4, own: true, measured: undefined });
  });

  it('is the median of what was measured', () => {
    const notes = root('2026-01-01') + root('2026-02-20', 'regrowth 2cm') + root('2026-04-11', 'regrowth 15mm');
    expect(growth(notes + look('2026-04-21')).rate).toBe(0.35);
    expect(growth(`${notes + root('2026-05-31', 'regrowth 25mm')}${look('2026-06-10')}`).rate).toBe(0.4);
  });

  it('learns nothing from a few days, or from what hair does not grow: British Journal of Dermatology 2001 and International Journal of Dermatology 44 (2005)', () => {
    const learns = (date: string, length: string): boolean =>
      growth(root('2026-01-01') + look(date, `regrowth ${length}`) + look('2026-12-01')).own;
    expect(learns('2026-01-14', '5mm')).toBe(false);
    expect(learns('2026-01-15', '5mm')).toBe(true);
    expect(learns('2026-04-11', '14mm')).toBe(false);
    expect(learns('2026-04-11', '15mm')).toBe(true);
    expect(learns('2026-04-11', '51.7mm')).toBe(true);
    expect(learns('2026-04-11', '52mm')).toBe(false);
  });

  it('learns nothing where no root service stands before', () => {
    expect(growth(look('2026-02-20', 'regrowth 2cm') + look('2026-03-02')).own).toBe(false);
  });

  it('is measured in millimetres, of the first line that gives a length', () => {
    expect(growth(look('2026-02-20', 'regrowth 1in\nregrowth 2cm')).measured).toBe(25.4);
    const { visit } = lastOf(look('2026-02-20', 'regrowth 2cm'));
    const [fact] = visit.entry.facts;
    if (fact?.word !== 'regrowth') throw new Error('no regrowth line');
    const odd = { ...fact, length: { ...fact.length, unit: 'g' } };
    expect(measuredGrowth({ ...visit, entry: { ...visit.entry, facts: [odd] } })).toBeUndefined();
  });

  it('does not move when a later visit changes', () => {
    const notes = root('2026-01-01') + root('2026-02-20', 'regrowth 2cm');
    const before = reckonedOf(notes).map(({ growth: one }) => one);
    const after = reckonedOf(notes + root('2026-04-11', 'regrowth 15mm')).map(({ growth: one }) => one);
    expect(after.slice(0, 2)).toEqual(before);
  });
});
