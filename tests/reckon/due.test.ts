import { describe, expect, it } from 'vitest';
import { type Due, dueClients } from '../../src/reckon/ahead/due.ts';
import { reckonAll } from '../../src/reckon/visit.ts';
import { SHELF } from './bowls-of.ts';
import { journalOf } from './journal-of.ts';

const listOf = (notes: string, on: string, until: string, salon = '') =>
  dueClients(reckonAll(journalOf(`salon harbour\n  hours 9-7\n${salon}\n${SHELF}\n${notes}`)), on, until);

const dueOf = (notes: string, on = '2026-11-25', until = '2026-12-23', salon = ''): readonly Due[] =>
  listOf(notes, on, until, salon).due;

const short = ({ client, by, status, first, last, late }: Due): unknown[] => [
  client.name,
  by,
  status,
  first,
  last,
  late,
];

const COLOUR = '  bowl A 40 cream 7/0 + 60 dev-6\n  place A roots on-scalp';

const visit = (date: string, rest = '', client = 'wren-abbott'): string =>
  `visit ${date} ${client}\n${COLOUR}\n${rest}\n`;

describe('who is due by a `next` line', () => {
  it.each([
    ['next 8w', '2026-10-07', ['next', 'due', '2026-12-02', '2026-12-02', 0]],
    ['next 6-8w', '2026-10-07', ['next', 'due', '2026-11-18', '2026-12-02', 0]],
    ['next 6-8w', '2026-09-16', ['next', 'overdue', '2026-10-28', '2026-11-11', 14]],
    ['next 1-2mo', '2026-10-31', ['next', 'due', '2026-11-30', '2026-12-31', 0]],
    ['next 20d', '2026-11-20', ['next', 'due', '2026-12-10', '2026-12-10', 0]],
    ['next from 2026-12-02', '2026-10-07', ['next', 'due', '2026-12-02', undefined, 0]],
    ['next from 2026-11-02', '2026-10-07', ['next', 'due', '2026-11-02', undefined, 23]],
    ['next 2026-12', '2026-10-07', ['next', 'due', '2026-12-01', '2026-12-31', 0]],
    ['next from 2026-12', '2026-10-07', ['next', 'due', '2026-12-01', undefined, 0]],
    ['next 2026-12-19 14:00 foils', '2026-10-07', ['booked', 'due', '2026-12-19', '2026-12-19', 0]],
    ['next 2026-11-19', '2026-10-07', ['booked', 'overdue', '2026-11-19', '2026-11-19', 6]],
    ['next 8w', '2026-01-07', ['next', 'away', '2026-03-04', '2026-03-04', 266]],
  ])('%s after %s', (next, date, expected) => {
    const [one] = dueOf(visit(date, `  ${next}`));
    expect(one && short(one).slice(1)).toEqual(expected);
  });

  it('leaves out who is due after the weeks asked for, and counts both ends', () => {
    const notes = visit('2026-10-28', '  next 8w');
    expect(dueOf(notes, '2026-11-25', '2026-12-22')).toEqual([]);
    expect(dueOf(notes, '2026-11-25', '2026-12-23')).toHaveLength(1);
    expect(dueOf(notes, '2026-12-23', '2026-12-30')[0]).toMatchObject({ status: 'due', late: 0 });
    expect(dueOf(notes, '2026-12-24', '2026-12-30')[0]).toMatchObject({ status: 'overdue', late: 1 });
  });

  it('goes by the last visit, and by one before it while no colour has gone on since', () => {
    const first = visit('2026-10-07', '  next 8w');
    expect(dueOf(`${first}visit 2026-11-01 wren-abbott\n  cut\n`).map(short)).toEqual([
      ['wren-abbott', 'next', 'due', '2026-12-02', '2026-12-02', 0],
    ]);
    expect(dueOf(first + visit('2026-11-01'))).toEqual([]);
    expect(dueOf(`${first}visit 2026-12-03 wren-abbott\n  cut\n`, '2026-12-10', '2026-12-30')).toEqual([]);
  });

  it('does not know of a later visit before its day, other than as booked', () => {
    const notes = `${visit('2026-10-07', '  next 8w')}visit 2026-12-01 2.30 wren-abbott\n`;
    const [one] = dueOf(notes);
    expect(one && short(one)).toEqual(['wren-abbott', 'booked', 'due', '2026-12-01', '2026-12-01', 0]);
    // A bare 2.30 is in the afternoon, by the salon's hours.
    expect(one?.time).toBe(14 * 60 + 30);
    expect(dueOf(notes, '2026-12-01', '2026-12-10')).toEqual([]);
  });

  it('reads the time of a booked `next` by the salon’s hours too', () => {
    expect(dueOf(visit('2026-10-07', '  next 2026-12-19 2.30'))[0]?.time).toBe(14 * 60 + 30);
  });
});

describe('who is due by her own rhythm', () => {
  it('is the middle of the days between root services, one odd gap or not', () => {
    const notes = ['2026-01-07', '2026-03-04', '2026-04-29', '2026-09-02', '2026-10-28']
      .map((date) => visit(date))
      .join('');
    const [one] = dueOf(notes);
    expect(one && short(one)).toEqual(['wren-abbott', 'rhythm', 'due', '2026-12-23', '2026-12-23', 0]);
    expect(one?.rhythm).toEqual({ days: 56, service: 'roots', since: '2026-10-28' });
  });

  it('takes visits soon after each other for one service, and needs two gaps', () => {
    const dates = ['2026-09-16', '2026-10-21', '2026-10-28'];
    expect(dueOf(dates.map((date) => visit(date)).join(''))).toEqual([]);
    const more = ['2026-08-12', ...dates].map((date) => visit(date)).join('');
    expect(dueOf(more)[0]?.rhythm).toEqual({ days: 35, service: 'roots', since: '2026-10-28' });
  });

  it('goes by colours where the roots were not done of late', () => {
    const gloss = (date: string): string =>
      `visit ${date} wren-abbott\n  bowl G 30 cream 7/0 + 45 dev-6\n  place G ends\n`;
    const roots = ['2025-09-01', '2025-10-27', '2025-12-22'].map((date) => visit(date)).join('');
    const [one] = dueOf(roots + ['2026-03-30', '2026-07-06', '2026-09-14'].map(gloss).join(''));
    expect(one?.rhythm?.service).toBe('colour');
  });

  it('is said to be unknown where there is none, for a year', () => {
    expect(listOf(visit('2026-05-01'), '2026-11-25', '2026-12-23').unknown.map(({ client }) => client.name)).toEqual([
      'wren-abbott',
    ]);
    expect(listOf(visit('2025-05-01'), '2026-11-25', '2026-12-23').unknown).toEqual([]);
  });
});

describe('the skin tests of who is due', () => {
  const policy = '  policy skin-test 48h every 26w\n  policy skin-test void after reaction';
  const tests = (test: string, next = 'next 2026-12-02', rest = ''): unknown[] =>
    dueOf(
      `client wren-abbott\n  ${test}\n${visit('2026-10-07', `  ${rest}\n  ${next}`)}`,
      '2026-11-25',
      '2026-12-23',
      policy,
    ).flatMap((one) =>
      one.tests.map(({ standing, renew, makeBy }) => [standing.product, standing.status, renew, makeBy]),
    );

  it('are looked up for the day she is awaited, not for today', () => {
    // 26 weeks from 2026-06-01 end on 2026-11-30.
    const read = 'test skin 2026-06-01 10:00 cream read 2026-06-03 11:00 clear';
    expect(tests(read, 'next 2026-11-30')).toEqual([['cream', 'valid', false, '2026-11-28']]);
    expect(tests(read, 'next 2026-12-01')).toEqual([['cream', 'expired', true, '2026-11-29']]);
  });

  it('stand as missing, unread, positive or void', () => {
    expect(tests('natural 6')).toEqual([['cream', 'missing', true, '2026-11-30']]);
    expect(tests('test skin 2026-11-20 10:00 cream')).toEqual([['cream', 'unread', true, '2026-11-30']]);
    expect(tests('test skin 2026-11-01 cream read 2026-11-03 reaction')[0]).toContain('positive');
    const clear = 'test skin 2026-09-01 10:00 cream read 2026-09-03 11:00 clear';
    expect(tests(clear, 'next 2026-12-02', 'reaction A roots burning')[0]).toContain('void');
  });

  it('are looked up for today where she is overdue', () => {
    const [one] = dueOf(visit('2026-09-02', '  next 8w'));
    expect([one?.awaited, one?.tests[0]?.makeBy]).toEqual(['2026-11-25', '2026-11-23']);
  });

  it('come with the holds in force on that day', () => {
    const held = (until: string): unknown =>
      dueOf(visit('2026-10-07', `  hold lightener to ${until}\n  next 2026-12-02`))[0]?.holds.map(({ what }) => what);
    expect(held('2027-01-01')).toEqual(['lightener']);
    expect(held('2026-12-02')).toEqual([]);
  });
});

describe('the list', () => {
  it('is by the first day, then by name', () => {
    const notes =
      visit('2026-10-07', '  next 8w', 'zoe-z') +
      visit('2026-10-07', '  next 8w', 'ann-a') +
      visit('2026-09-30', '  next 8w');
    expect(dueOf(notes).map(({ client }) => client.name)).toEqual(['wren-abbott', 'ann-a', 'zoe-z']);
  });

  it('has neither somebody whose only visit lies further ahead, nor one who is due again the same day', () => {
    expect(listOf(visit('2027-02-01'), '2026-11-25', '2026-12-23')).toEqual({ due: [], unknown: [] });
    expect(dueOf(visit('2026-10-07', '  next 4h'))).toEqual([]);
    expect(dueOf(visit('2026-10-07', '  next 2026-10-01'))).toEqual([]);
  });

  it('has a first visit noted ahead, with the tests its own bowls ask for', () => {
    const [one] = dueOf(visit('2026-12-01'));
    expect([one?.by, one?.lastVisit, one?.tests.map(({ standing }) => standing.product)]).toEqual([
      'booked',
      '',
      ['cream'],
    ]);
  });

  it('bears a wait past the calendar’s end', () => {
    expect(dueOf(visit('9999-12-01', '  next 8w'), '9999-12-02', '9999-12-30')).toEqual([]);
  });
});
