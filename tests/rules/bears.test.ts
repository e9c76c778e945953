import { describe, expect, test } from 'vitest';
import { cardMarkdown } from '../../src/pages/card.ts';
import { prepMarkdown } from '../../src/pages/prep.ts';
import { reckonAll } from '../../src/reckon/visit.ts';
import { RULES } from '../../src/rules/all.ts';
import { judge } from '../../src/rules/judging.ts';
import { BEARINGS } from '../../src/rules/rule.ts';
import { journalOf } from '../reckon/journal-of.ts';

test('every rule says whether what it finds bears on later days', () => {
  expect(RULES.filter(({ bears }) => !BEARINGS.includes(bears)).map(({ name }) => name)).toEqual([]);
  // Each is used: a list that is all of one kind would say nothing.
  for (const one of BEARINGS)
    expect(RULES.some(({ bears, severity }) => bears === one && severity === 'stop')).toBe(true);
});

const NOTES = `salon harbour "Harbour Row"
product clay "Peregrine clay" lightener
  mix 1:2
  time 20-50 min from first-on
product dev-6 "Cream developer" developer 6%
client wren-abbott "Wren Abbott"
visit 2026-05-02 wren-abbott
  bowl A 30 clay + 6% 1:2
  place A top weave x6 off-scalp 1cm foil
  on 14:00 A top
  check 14:20 top gold
  check 14:50 top yellow
  off 15:20 A
  result top 9
`;

const cardOn = (on: string): string => {
  const journal = journalOf(NOTES);
  const all = reckonAll(journal);
  const client = journal.clients.get('wren-abbott');
  if (client === undefined) throw new Error('no client');
  return cardMarkdown(journal, client, all.get('wren-abbott') ?? [], judge(journal, on).all().findings, { on });
};

const alertsOf = (card: string): string => card.split('## ')[1] ?? '';

describe('a stop about what a visit did', () => {
  test('is an alert on its day', () => {
    expect(alertsOf(cardOn('2026-05-02'))).toContain('`past-time`');
    expect(alertsOf(cardOn('2026-05-02'))).not.toContain('Found in earlier visits');
  });

  test('is no order for a later day: it stands in its visit and in one line', () => {
    const card = cardOn('2026-06-02');
    const alerts = alertsOf(card);
    expect(alerts).not.toContain('**stop**');
    expect(alerts).toContain('- **Found in earlier visits** 1 stop: 2026-05-02 past-time');
    expect(card.split('## Visits')[1]).toContain('**stop**');
    expect(card.match(/\*\*stop\*\*/g)).toHaveLength(1);
  });

  test('stands on the sheet for a later day as the same line', () => {
    const journal = journalOf(NOTES);
    const all = reckonAll(journal);
    const client = journal.clients.get('wren-abbott');
    if (client === undefined) throw new Error('no client');
    const on = '2026-06-02';
    const sheet = prepMarkdown(journal, client, all.get('wren-abbott') ?? [], judge(journal, on).all().findings, [], {
      on,
    });
    expect(sheet).toContain('**Found in earlier visits** 1 stop: 2026-05-02 past-time');
    expect(sheet).not.toContain('**stop**');
  });
});
