import { describe, expect, it } from 'vitest';
import { dueClients } from '../../../src/reckon/ahead/due.ts';
import { figure } from '../../../src/reckon/say.ts';
import { type Expected, expectedVisits } from '../../../src/reckon/stock/expected.ts';
import { reckonAll } from '../../../src/reckon/visit.ts';
import { SHELF } from '../bowls-of.ts';
import { journalOf } from '../journal-of.ts';

const [ON, UNTIL] = ['2026-11-25', '2026-12-23'];

const journalIn = (notes: string) =>
  journalOf(`salon harbour\n  hours 9-7\n${SHELF}\nclient never-came "Never"\n${notes}`);

const expectedIn = (notes: string, until = UNTIL): Expected[] => {
  const journal = journalIn(notes);
  return expectedVisits(journal.shelf, reckonAll(journal), ON, until);
};

const short = ({ client, first, last, why, times }: Expected): unknown[] => [client.name, first, last, why, times];

const taken = (notes: string, until = UNTIL): string[] =>
  expectedIn(notes, until).flatMap(({ takes }) =>
    takes.map(({ label, amount }) => `${amount && figure(amount)} ${label}`),
  );

const colour = (date: string, rest = '', client = 'wren-abbott'): string =>
  `visit ${date} ${client}\n  bowl A 40 clay + 80 dev-6\n${rest}\n`;

describe('who is expected', () => {
  const notes = [
    colour('2026-10-07', '  next 8w', 'by-wait'),
    colour('2026-10-07', '  next 7-9w', 'by-window'),
    colour('2026-10-07', '  next from 2026-11-02', 'by-from'),
    colour('2026-10-07', '  next 2026-12', 'by-month'),
    colour('2026-10-07', '  next 2026-12-19 14:00', 'by-day'),
    colour('2026-08-05', '  next 8w', 'long-overdue'),
    colour('2026-09-23', '  next 8w', 'late-one'),
    colour('2026-01-07', '  next 8w', 'gone-away'),
    colour('2026-10-07', '  next 12w', 'too-far'),
    colour('2026-10-07', '', 'no-next'),
    'visit 2026-10-07 only-cut\n  cut\n  next 8w\n',
    ...['2026-07-22', '2026-09-02', '2026-10-14'].map((date) => colour(date, '', 'by-rhythm')),
    `${colour('2026-10-07', '  next 8w', 'cut-since')}visit 2026-11-01 cut-since\n  cut\n`,
    `${colour('2026-10-07', '', 'noted-ahead')}${colour('2026-12-02', '', 'noted-ahead')}`,
  ].join('');

  it('is who is due or overdue, on the same days, by whatever it is known', () => {
    const { due } = dueClients(reckonAll(journalIn(notes)), ON, UNTIL);
    const same = due.filter(({ status }) => status !== 'away');
    const days = (all: readonly Pick<Expected, 'client' | 'first' | 'last' | 'time'>[]): unknown[] =>
      all.map(({ client, first, last, time }) => [client.name, first, last, time]).sort();
    expect(days(expectedIn(notes))).toEqual(days(same));
    expect(same).toHaveLength(11);
  });

  it('is overdue past the last day of the window, booked by a day of its own, else due', () => {
    const why = new Map(expectedIn(notes).map((one) => [one.client.name, one.why]));
    expect(why.get('by-window')).toBe('due');
    expect(why.get('by-from')).toBe('due');
    expect(why.get('by-day')).toBe('booked');
    expect(why.get('noted-ahead')).toBe('booked');
    expect(why.get('late-one')).toBe('overdue');
  });

  it('comes nought times when more than eight weeks past it', () => {
    expect(expectedIn(colour('2026-08-05', '  next 8w')).map(short)).toEqual([
      ['wren-abbott', '2026-09-30', '2026-09-30', 'overdue', 1],
    ]);
    expect(expectedIn(colour('2026-08-04', '  next 8w')).map(short)).toEqual([
      ['wren-abbott', '2026-09-29', '2026-09-29', 'overdue', 0],
    ]);
  });

  it('comes again after the same wait or rhythm, from today on where overdue', () => {
    const times = (rest: string, until: string): number[] =>
      expectedIn(colour('2026-10-28', rest), until).map((one) => one.times);
    expect(times('  next 4w', '2026-12-23')).toEqual([2]);
    expect(times('  next 3w', '2026-12-23')).toEqual([2]);
    expect(times('  next 2026-12-01', '2027-06-01')).toEqual([1]);
    const rhythm = ['2026-07-22', '2026-09-02', '2026-10-14'].map((date) => colour(date)).join('');
    expect(expectedIn(rhythm, '2027-01-06').map((one) => one.times)).toEqual([2]);
  });
});

describe('what is expected to be taken', () => {
  it('is what was mixed the last time, at the share that next asks for', () => {
    expect(taken(colour('2026-10-07', '  left A 20\n  next 8w A -20%'))).toEqual(['32 clay', '64 dev-6']);
  });

  it('is what the forecast comes to, further mixes with it', () => {
    // 120 less 20 is 100, and a tenth to spare.
    expect(taken(colour('2026-10-07', '  left A 20\n  next 8w'))).toEqual(['36.67 clay', '73.33 dev-6']);
    const more = taken(colour('2026-10-07', '  more A 60\n  left A 30\n  next 8w'));
    expect(more).toEqual(['36.67 clay', '73.33 dev-6', '18.33 clay', '36.67 dev-6']);
  });

  it('is the same again where a bowl has no weight to plan, or a product no bowl', () => {
    expect(taken('visit 2026-10-07 wren-abbott\n  bowl A 40 clay + 80 dev-6\n  left A 120\n  next 8w\n')).toEqual([
      '40 clay',
      '80 dev-6',
    ]);
    expect(taken('visit 2026-10-07 wren-abbott\n  wash 15 conditioner\n  next 8w\n')).toEqual(['15 conditioner']);
    expect(taken('visit 2026-10-07 wren-abbott\n  bowl A clay + dev-6\n  wash 15 conditioner\n  next 8w\n')).toEqual([
      'undefined clay',
      'undefined dev-6',
      '15 conditioner',
    ]);
  });

  it('is what the visit noted ahead says, else as the last time; nothing before a first visit', () => {
    const ahead = (lines: string): string => `visit 2026-12-02 wren-abbott\n${lines}\n`;
    expect(taken(colour('2026-10-07') + ahead('  bowl B 10 clay + 20 dev-6'))).toEqual(['10 clay', '20 dev-6']);
    expect(taken(colour('2026-10-07') + ahead('  aim lighter'))).toEqual(['40 clay', '80 dev-6']);
    expect(taken(ahead('  aim lighter'))).toEqual([]);
    expect(expectedIn(ahead('  aim lighter')).map(short)).toEqual([
      ['wren-abbott', '2026-12-02', '2026-12-02', 'booked', 1],
    ]);
  });
});
