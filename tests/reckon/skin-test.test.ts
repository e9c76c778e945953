import { describe, expect, it } from 'vitest';
import { SKIN_TEST_LEAD, skinTestOn } from '../../src/reckon/testing/skin-test.ts';
import { type Moment, testsFor } from '../../src/reckon/testing/tests.ts';
import { journalOf } from './journal-of.ts';

const POLICY = 'policy skin-test 48h every 26w\npolicy skin-test void after reaction';

/** How products stand: `cream valid 2026-09-01`. */
const standOn = (
  [date, time]: readonly [string, string?],
  lines: string,
  { policy = POLICY, products = ['cream'], reactions = [] as Moment[] } = {},
): string[] => {
  const journal = journalOf(`salon harbour\n${policy}\nclient wren-abbott\n${lines}`);
  const client = journal.clients.get('wren-abbott');
  if (client === undefined) throw new Error('no client');
  const [hour, minute] = (time ?? '').split(':').map(Number);
  const now = { date, minute: time === undefined ? undefined : (hour ?? 0) * 60 + (minute ?? 0) };
  return skinTestOn(now, products, testsFor(client, undefined), journal.salon, reactions).map(
    ({ product, status, test }) => `${product} ${status} ${test?.made?.date ?? '-'}`,
  );
};

const CLEAR = 'test skin 2026-09-01 11:00 cream, gloss read 2026-09-03 11:00 clear\n';

describe('skinTestOn', () => {
  it('finds the test of each product', () => {
    expect(standOn(['2026-09-04', '14:00'], CLEAR, { products: ['cream', 'gloss', 'toner'] })).toEqual([
      'cream valid 2026-09-01',
      'gloss valid 2026-09-01',
      'toner missing -',
    ]);
  });

  it('takes a test that names no product for all of them', () => {
    expect(standOn(['2026-09-04'], 'test skin 2026-09-01 read 2026-09-03 clear')).toEqual(['cream valid 2026-09-01']);
  });

  it('counts no other test than the skin’s', () => {
    expect(standOn(['2026-09-04'], 'test strand 2026-09-01 cream 20min clear')).toEqual(['cream missing -']);
  });

  it('asks for 48 hours before the colour to the minute: page of a UK trade federation on allergy alert testing', () => {
    expect(SKIN_TEST_LEAD).toBe(2880);
    const made = 'test skin 2026-09-01 11:00 cream read 2026-09-03 11:00 clear';
    expect(standOn(['2026-09-03', '10:59'], made, { policy: '' })).toEqual(['cream unread 2026-09-01']);
    expect(standOn(['2026-09-03', '11:00'], made, { policy: '' })).toEqual(['cream valid 2026-09-01']);
    const early = 'test skin 2026-09-01 11:00 cream read 2026-09-03 10:50 clear';
    expect(standOn(['2026-09-03', '10:59'], early, { policy: '' })).toEqual(['cream too-soon 2026-09-01']);
    expect(standOn(['2026-09-03', '11:00'], early, { policy: '' })).toEqual(['cream read-too-soon 2026-09-01']);
  });

  it('takes the salon’s own lead', () => {
    const made = 'test skin 2026-09-01 11:00 cream read 2026-09-02 11:00 clear';
    expect(standOn(['2026-09-02', '12:00'], made, { policy: 'policy skin-test 24h' })).toEqual([
      'cream valid 2026-09-01',
    ]);
  });

  it('takes a time that is not noted in favour of the note', () => {
    expect(standOn(['2026-09-03'], 'test skin 2026-09-01 cream read 2026-09-03 clear')).toEqual([
      'cream valid 2026-09-01',
    ]);
    expect(standOn(['2026-09-02'], 'test skin 2026-09-01 cream read 2026-09-02 clear')).toEqual([
      'cream too-soon 2026-09-01',
    ]);
    expect(standOn(['2026-09-03'], 'test skin 2026-09-01 cream clear')).toEqual(['cream valid 2026-09-01']);
  });

  it('lets a test expire the day after the salon’s interval', () => {
    expect(standOn(['2027-03-02'], CLEAR)).toEqual(['cream valid 2026-09-01']);
    expect(standOn(['2027-03-03'], CLEAR)).toEqual(['cream expired 2026-09-01']);
    expect(standOn(['2029-03-03'], CLEAR, { policy: 'policy skin-test 48h' })).toEqual(['cream valid 2026-09-01']);
  });

  it('says a test that is not read, or read later', () => {
    expect(standOn(['2026-09-04'], 'test skin 2026-09-01 cream')).toEqual(['cream unread 2026-09-01']);
    expect(standOn(['2026-09-04'], 'test skin 2026-09-01 cream read 2026-09-05 clear')).toEqual([
      'cream unread 2026-09-01',
    ]);
    expect(standOn(['2026-09-04'], 'test skin 2026-09-01 cream read 2026-09-03')).toEqual(['cream unread 2026-09-01']);
  });

  it('leaves out a test made later', () => {
    expect(standOn(['2026-08-31'], CLEAR)).toEqual(['cream missing -']);
    expect(standOn(['2026-09-01', '10:59'], CLEAR)).toEqual(['cream missing -']);
  });

  it('takes the newest test that holds, else the newest', () => {
    const older = 'test skin 2026-06-01 11:00 cream read 2026-06-03 11:30 clear\n';
    expect(standOn(['2026-09-04'], `${older}test skin 2026-09-03 cream`)).toEqual(['cream valid 2026-06-01']);
    expect(standOn(['2027-01-04'], `${older}test skin 2027-01-03 cream`)).toEqual(['cream unread 2027-01-03']);
    expect(standOn(['2026-09-04'], `${CLEAR}${older}`)).toEqual(['cream valid 2026-09-01']);
  });

  it('keeps a positive test, whatever later ones show', () => {
    const positive = 'test skin 2026-09-10 11:00 cream read 2026-09-12 11:30 reaction\n';
    expect(standOn(['2026-09-20'], CLEAR + positive)).toEqual(['cream positive 2026-09-10']);
    expect(standOn(['2026-09-20'], `${positive}test skin 2026-09-18 cream`)).toEqual(['cream positive 2026-09-10']);
    expect(standOn(['2026-09-25'], `${positive}test skin 2026-09-20 11:00 cream read 2026-09-22 11:30 clear`)).toEqual([
      'cream positive 2026-09-10',
    ]);
    expect(standOn(['2026-09-25'], 'test skin 2026-09-20 cream positive')).toEqual(['cream positive 2026-09-20']);
  });

  it('keeps a reading that settles nothing until a later one is clear, and against a decision', () => {
    const pink = 'test skin 2026-09-10 11:00 cream read 2026-09-12 11:30 clear, slightly pink\n';
    expect(standOn(['2026-09-20'], CLEAR + pink)).toEqual(['cream unclear 2026-09-10']);
    expect(standOn(['2026-09-20'], `${pink}test skin not-needed "same range"`)).toEqual(['cream unclear 2026-09-10']);
    expect(standOn(['2026-09-25'], `${pink}test skin 2026-09-20 11:00 cream read 2026-09-22 11:30 clear`)).toEqual([
      'cream valid 2026-09-20',
    ]);
  });

  it('takes every earlier test for void after a reaction, by the salon’s policy', () => {
    const reactions = [{ date: '2026-10-01', minute: 700 }];
    expect(standOn(['2026-10-20'], CLEAR, { reactions })).toEqual(['cream void 2026-09-01']);
    expect(standOn(['2026-10-20'], CLEAR, { reactions, policy: 'policy skin-test 48h' })).toEqual([
      'cream valid 2026-09-01',
    ]);
    expect(standOn(['2026-09-30'], CLEAR, { reactions })).toEqual(['cream valid 2026-09-01']);
    const renewed = `${CLEAR}test skin 2026-10-05 11:00 cream read 2026-10-07 11:00 clear`;
    expect(standOn(['2026-10-20'], renewed, { reactions })).toEqual(['cream valid 2026-10-05']);
    const other = `${CLEAR}test skin 2026-09-10 neon read 2026-09-12 reaction`;
    expect(standOn(['2026-09-20'], other)).toEqual(['cream void 2026-09-01']);
    expect(standOn(['2026-10-20'], 'test skin read 2026-09-03 clear', { reactions })).toEqual(['cream void -']);
    expect(standOn(['2026-09-20'], `${CLEAR}test skin neon read reaction`)).toEqual(['cream valid 2026-09-01']);
  });

  it('says when and by what, and how old the test is', () => {
    const journal = journalOf(`salon harbour\n${POLICY}\nclient wren-abbott\n${CLEAR}`);
    const client = journal.clients.get('wren-abbott');
    const reaction = { date: '2026-10-01', minute: 700 };
    const [cream] = skinTestOn(
      { date: '2026-10-20', minute: undefined },
      ['cream'],
      client ? testsFor(client, undefined) : [],
      journal.salon,
      [reaction],
    );
    expect(cream).toMatchObject({ lead: 2880, every: { value: 26, unit: 'w' }, voidedBy: reaction });
  });

  it('takes a decision that none is needed, but not against a reaction', () => {
    const decided = 'test skin not-needed "same range"';
    expect(standOn(['2026-09-20'], decided)).toEqual(['cream not-needed -']);
    expect(standOn(['2026-09-20'], `${decided}\ntest skin 2026-09-01 cream`)).toEqual(['cream not-needed -']);
    expect(standOn(['2026-09-20'], `${decided}\n${CLEAR}`)).toEqual(['cream valid 2026-09-01']);
    expect(standOn(['2026-09-20'], `${decided}\ntest skin 2026-09-10 cream read 2026-09-12 reaction`)).toEqual([
      'cream positive 2026-09-10',
    ]);
    expect(
      standOn(['2026-10-20'], `${decided}\n${CLEAR}`, { reactions: [{ date: '2026-10-01', minute: undefined }] }),
    ).toEqual(['cream void 2026-09-01']);
  });

  it('takes a decision of a visit for that day only', () => {
    const visit = 'visit 2026-09-20 wren-abbott\n  test skin not-needed "direct dye"';
    expect(standOn(['2026-09-20'], visit)).toEqual(['cream not-needed 2026-09-20']);
    expect(standOn(['2026-09-27'], visit)).toEqual(['cream missing -']);
  });

  it('counts the days of a reading whose test is nowhere noted', () => {
    expect(standOn(['2026-09-04'], 'test skin read 2026-09-03 11:30 clear')).toEqual(['cream valid -']);
    expect(standOn(['2027-03-05'], 'test skin read 2026-09-03 11:30 clear')).toEqual(['cream expired -']);
    expect(standOn(['2026-09-04'], 'test skin read clear')).toEqual(['cream unread -']);
  });
});
