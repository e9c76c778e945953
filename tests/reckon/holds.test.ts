import { describe, expect, it } from 'vitest';
import { breaksHold, cautionsOn, holdsOn } from '../../src/reckon/client/holds.ts';
import { dayAfter, firstDayOf } from '../../src/reckon/when.ts';
import { journalOf } from './journal-of.ts';
import { lastOf } from './reckoned.ts';

const clientOf = (notes: string) => {
  const client = journalOf(notes).clients.get('wren-abbott');
  if (client === undefined) throw new Error('no client');
  return client;
};

const holds = (date: string, line: string): boolean =>
  holdsOn(date, clientOf(`client wren-abbott\nnatural 6\n${line}`), []).length > 0;

describe('firstDayOf and dayAfter', () => {
  it('begin a month and a year on their first day', () => {
    expect(['2027-01-05', '2027-01', '2027'].map(firstDayOf)).toEqual(['2027-01-05', '2027-01-01', '2027-01-01']);
  });

  it('count days, weeks and calendar months, the far end of a range, parts as whole', () => {
    const length = (value: number, unit: 'min' | 'h' | 'd' | 'w' | 'mo', to?: number): string =>
      dayAfter('2026-01-31', { value, unit, at: 0, ...(to !== undefined && { to }) });
    expect(length(10, 'd')).toBe('2026-02-10');
    expect(length(4, 'w')).toBe('2026-02-28');
    expect(length(1, 'mo')).toBe('2026-02-28');
    expect(length(6, 'w', 8)).toBe('2026-03-28');
    expect(length(0.5, 'w')).toBe('2026-02-04');
    expect(length(0.5, 'mo')).toBe('2026-02-28');
    expect(length(36, 'h')).toBe('2026-02-02');
    expect(length(30, 'min')).toBe('2026-02-01');
  });
});

describe('holdsOn', () => {
  it('lifts on the date, or on the first day of the month', () => {
    expect(holds('2026-08-31', 'hold lightener to 2026-09-01')).toBe(true);
    expect(holds('2026-09-01', 'hold lightener to 2026-09-01')).toBe(false);
    expect(holds('2026-12-31', 'hold lightener to 2027-01')).toBe(true);
    expect(holds('2027-01-01', 'hold lightener to 2027-01')).toBe(false);
  });

  it('is for good without an end, also with a length that nothing says the beginning of', () => {
    expect(holds('2099-01-01', 'hold oxidative')).toBe(true);
    expect(holds('2099-01-01', 'hold oxidative 4w')).toBe(true);
  });

  it('begins where it says so, and lasts its length from there', () => {
    expect(holds('2026-08-31', 'hold all from 2026-09-01')).toBe(false);
    expect(holds('2026-09-01', 'hold all from 2026-09-01')).toBe(true);
    expect(holds('2026-09-28', 'hold all from 2026-09-01 4w')).toBe(true);
    expect(holds('2026-09-29', 'hold all from 2026-09-01 4w')).toBe(false);
  });

  it('of an earlier visit counts from its day', () => {
    const client = clientOf(
      'visit 2026-09-01 wren-abbott\n  hold lightener 8w "temples red"\nvisit 2026-10-27 wren-abbott\n  aim brighter',
    );
    expect(holdsOn('2026-10-26', client, client.visits)).toMatchObject([
      { what: 'lightener', says: 'temples red', from: '2026-09-01', until: '2026-10-27', place: { line: 1 } },
    ]);
    expect(holdsOn('2026-10-27', client, client.visits)).toEqual([]);
    expect(holdsOn('2026-10-26', client, [])).toEqual([]);
  });
});

describe('breaksHold', () => {
  const broken = (what: string, bowl: string): boolean =>
    lastOf(`visit 2026-09-04 wren-abbott\n${bowl}`).bowls.some((one) => breaksHold({ what }, one));

  it('finds a kind and a product', () => {
    expect(broken('lightener', 'bowl A 30 clay + 60 dev-6')).toBe(true);
    expect(broken('clay', 'bowl A 30 clay + 60 dev-6')).toBe(true);
    expect(broken('toner', 'bowl A 30 clay + 60 dev-6')).toBe(false);
  });

  it('finds what works by oxidation, and any colour', () => {
    expect(broken('oxidative', 'bowl A 30 clay + 60 dev-6')).toBe(true);
    expect(broken('oxidative', 'bowl A 30 neon teal')).toBe(false);
    expect(broken('all', 'bowl A 30 neon teal')).toBe(true);
    expect(broken('all', 'bowl A 30 conditioner')).toBe(false);
  });

  it('finds it in what comes out of another bowl', () => {
    expect(broken('lightener', 'bowl A 30 clay + 60 dev-6\nbowl B 40 from A + 10 dev-3')).toBe(true);
    const [, second] = lastOf(
      'visit 2026-09-04 wren-abbott\nbowl A 30 clay + 60 dev-6\nbowl B 40 from A + 10 dev-3',
    ).bowls;
    expect(second && breaksHold({ what: 'lightener' }, second)).toBe(true);
  });
});

describe('cautionsOn', () => {
  it('is in force until its day, or until the first of its month', () => {
    const client = clientOf('client wren-abbott\n  caution pregnant until 2027-01\n  caution "asthma"\n  natural 6');
    expect(cautionsOn('2026-12-31', client)).toMatchObject([
      { text: 'pregnant', until: '2027-01-01', place: { line: 1 } },
      { text: 'asthma', until: undefined },
    ]);
    expect(cautionsOn('2027-01-01', client)).toMatchObject([{ text: 'asthma' }]);
  });
});
