import { describe, expect, it } from 'vitest';
import { type TestMade, testsFor } from '../../src/reckon/testing/tests.ts';
import { clockText } from '../../src/text/dates.ts';
import { journalOf } from './journal-of.ts';

const moment = (at: TestMade['made']): string =>
  at === undefined ? '-' : [at.date, at.minute === undefined ? '' : clockText(at.minute)].join(' ').trim();

const testsOf = (text: string, upTo?: string): string[] => {
  const journal = journalOf(text);
  const client = journal.clients.get('wren-abbott');
  if (client === undefined) throw new Error('no client');
  return testsFor(client, journal.salon.hours, upTo).map(
    ({ kind, products, made, read, result, notNeeded }) =>
      `${kind} ${products.join(',') || '*'}: made ${moment(made)}, read ${moment(read)}, ${result ?? 'unseen'}${notNeeded ? ', not needed' : ''}`,
  );
};

describe('testsFor', () => {
  it('gathers the tests of the client and of her visits, oldest first', () => {
    expect(
      testsOf(`client wren-abbott
test skin 2026-09-01 11:00 cream, gloss read 2026-09-03 11:30 clear
visit 2026-08-01 14:00 wren-abbott
test strand clay 20min yellow
test metal 14:05 40 dev-6 + 2 ammonia clear
`),
    ).toEqual([
      'strand clay: made 2026-08-01, read -, other',
      'metal dev-6,ammonia: made 2026-08-01 14:05, read -, clear',
      'skin cream,gloss: made 2026-09-01 11:00, read 2026-09-03 11:30, clear',
    ]);
  });

  it('reads a time by the salon’s hours', () => {
    expect(testsOf('salon harbour\nhours 9:00-19:00\nclient wren-abbott\ntest skin 2026-09-01 2:10 cream')).toEqual([
      'skin cream: made 2026-09-01 14:10, read -, unseen',
    ]);
  });

  it('knows what speaks against going on', () => {
    const results = ['clear', 'negative', 'reaction', 'positive', 'gummy', 'red'].map((word) =>
      testsOf(`client wren-abbott\ntest strand 2026-09-01 clay 20min ${word}`)[0]?.split(', ').at(-1),
    );
    expect(results).toEqual(['clear', 'clear', 'adverse', 'adverse', 'adverse', 'other']);
    expect(testsOf('client wren-abbott\ntest stretch 2026-09-01 ends springs-back')[0]).toContain('clear');
  });

  it('puts a later reading with the nearest earlier unread test of its kind', () => {
    const notes = `client wren-abbott
test skin 2026-08-01 11:00 cream
test skin read 2026-09-03 11:30 clear
test strand 2026-09-02 clay 20min
visit 2026-09-01 17:00 wren-abbott
test skin 17:10 gloss
visit 2026-09-10 17:00 wren-abbott
test skin 17:10 toner
`;
    expect(testsOf(notes)).toEqual([
      'skin cream: made 2026-08-01 11:00, read -, unseen',
      'skin gloss: made 2026-09-01 17:10, read 2026-09-03 11:30, clear',
      'strand clay: made 2026-09-02, read -, unseen',
      'skin toner: made 2026-09-10 17:10, read -, unseen',
    ]);
  });

  it('takes the newest of two unread tests, in any order of the lines', () => {
    expect(
      testsOf(
        'client wren-abbott\ntest skin 2026-08-20 cream\ntest skin 2026-08-01 gloss\ntest skin read 2026-09-03 clear',
      ),
    ).toEqual(['skin gloss: made 2026-08-01, read -, unseen', 'skin cream: made 2026-08-20, read 2026-09-03, clear']);
  });

  it('takes the visit’s day for a reading noted there, and the product it names', () => {
    const notes = `client wren-abbott
test skin 2026-09-01 11:00 cream
test skin 2026-09-01 11:05 gloss
visit 2026-09-03 17:00 wren-abbott
test skin cream read 17:10 clear
test skin gloss read 17:10 reaction
`;
    expect(testsOf(notes)).toEqual([
      'skin cream: made 2026-09-01 11:00, read 2026-09-03 17:10, clear',
      'skin gloss: made 2026-09-01 11:05, read 2026-09-03 17:10, adverse',
    ]);
  });

  it('keeps the place of a reading that has a line of its own', () => {
    const journal = journalOf(
      'client wren-abbott\ntest skin 2026-09-01 11:00 cream\n\nvisit 2026-09-03 17:00 wren-abbott\ntest skin read clear',
    );
    const client = journal.clients.get('wren-abbott');
    expect(client && testsFor(client, undefined)).toMatchObject([
      { place: { line: 1 }, readPlace: { line: 1 }, visit: undefined },
    ]);
  });

  it('lets a reading without a test stand by itself', () => {
    expect(testsOf('client wren-abbott\ntest skin read 2026-09-03 11:30 clear')).toEqual([
      'skin *: made -, read 2026-09-03 11:30, clear',
    ]);
    expect(testsOf('client wren-abbott\ntest skin read clear\ntest skin 2026-09-01 cream')).toEqual([
      'skin cream: made 2026-09-01, read -, clear',
    ]);
  });

  it('does not say when a result without a day was seen', () => {
    expect(testsOf('client wren-abbott\ntest skin 2026-09-01 cream read clear')).toEqual([
      'skin cream: made 2026-09-01, read -, clear',
    ]);
    expect(testsOf('visit 2026-09-03 wren-abbott\ntest metal 11:05 40 6% + 2 ammonia clear')).toEqual([
      'metal ammonia: made 2026-09-03 11:05, read -, clear',
    ]);
    expect(testsOf('visit 2026-09-03 wren-abbott\ntest metal 11:05 40 dev-6 + 2 ammonia read 11:35 clear')).toEqual([
      'metal dev-6,ammonia: made 2026-09-03 11:05, read 2026-09-03 11:35, clear',
    ]);
    expect(testsOf('client wren-abbott\ntest skin read 2026-09-04 clear\ntest skin read 2026-09-03 clear')).toEqual([
      'skin *: made -, read 2026-09-03, clear',
      'skin *: made -, read 2026-09-04, clear',
    ]);
  });

  it('goes up to a day', () => {
    const notes = `client wren-abbott
test skin 2026-09-01 cream
visit 2026-09-03 wren-abbott
test skin read 2026-09-03 clear
visit 2026-09-20 wren-abbott
test skin gloss
`;
    expect(testsOf(notes, '2026-09-02')).toEqual(['skin cream: made 2026-09-01, read -, unseen']);
    expect(testsOf(notes, '2026-09-03')).toEqual(['skin cream: made 2026-09-01, read 2026-09-03, clear']);
  });

  it('keeps what an undated visit notes', () => {
    const journal = journalOf('visit 2025-13-41 wren-abbott\ntest skin cream');
    const client = { name: 'wren-abbott', full: 'wren-abbott', entries: [], visits: journal.unfiled };
    expect(testsFor(client, undefined, '2026-01-01')).toMatchObject([{ kind: 'skin', made: undefined }]);
  });

  it('keeps a decision that none is needed', () => {
    expect(testsOf('client wren-abbott\ntest skin not-needed "same range"')).toEqual([
      'skin *: made -, read -, unseen, not needed',
    ]);
    expect(testsOf('visit 2026-09-03 wren-abbott\ntest skin not-needed "direct dye"')).toEqual([
      'skin *: made 2026-09-03, read -, unseen, not needed',
    ]);
  });
});
