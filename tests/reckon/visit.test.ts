import { describe, expect, it } from 'vitest';
import { reckonAll, reckonClient, reckonVisit } from '../../src/reckon/visit.ts';
import { demoJournal } from '../journal/demo.ts';
import { journalOf, runText } from './journal-of.ts';
import { lastOf, WIDE_SHELF } from './reckoned.ts';

describe('reckonVisit', () => {
  it('works out bowls, clock, money, age and what was used', () => {
    const visit = lastOf(`client wren-abbott "Wren Abbott"
born 1988-04-02
visit 2025-09-04 14:00 wren-abbott
bowl A 30 clay + 60 dev-6
on 14:35-14:55 A top
off 15:15 A
wash 15 conditioner
left A 9 binned
charge foils 95
`);
    expect(visit).toMatchObject({ date: '2025-09-04', age: 37, salon: { name: 'harbour' } });
    expect(visit.bowls.map(({ name }) => name)).toEqual(['A']);
    expect(visit.clock.runs.map(runText)).toEqual(['A top 14:35-14:55 off 15:15: 40/20']);
    expect(visit.money).toMatchObject({ charged: 9500, cost: 189 + 17 });
    expect(visit.uses.map(({ product }) => product)).toEqual(['clay', 'dev-6', 'conditioner']);
  });

  it('does not need a date', () => {
    const journal = journalOf(`${WIDE_SHELF}\nvisit 2025-13-41 wren-abbott\nbowl A 30 clay + 60 dev-6`);
    const [visit] = journal.unfiled;
    const client = { name: 'wren-abbott', full: 'wren-abbott', entries: [], visits: [] };
    expect(visit && reckonVisit(journal, client, visit, [])).toMatchObject({ date: '', age: undefined });
  });
});

describe('reckonClient and reckonAll', () => {
  it('go through the visits oldest first, each with those before', () => {
    const journal = journalOf(`${WIDE_SHELF}
visit 2026-02-26 wren-abbott
visit 2026-01-01 wren-abbott
bowl A 30 cream 7/0 + 45 dev-6
visit 2026-01-05 kit-hollin
`);
    const client = journal.clients.get('wren-abbott');
    expect(client && reckonClient(journal, client).map(({ date, daysSinceRoots }) => [date, daysSinceRoots])).toEqual([
      ['2026-01-01', undefined],
      ['2026-02-26', 56],
    ]);
    expect([...reckonAll(journal)].map(([name, visits]) => [name, visits.length])).toEqual([
      ['kit-hollin', 1],
      ['wren-abbott', 2],
    ]);
  });
});

describe('the demo journal', () => {
  const journal = demoJournal();
  const visits = [...reckonAll(journal).values()].flat();

  it('has two mistakes on the clock, and no more', () => {
    expect(
      visits.flatMap(({ client, date, clock }) => clock.problems.map(({ kind }) => [client.name, date, kind])),
    ).toEqual([
      ['philippa-quayle', '2025-10-17', 'no-off'],
      ['soraya-bell', '2026-01-27', 'check-before-on'],
    ]);
  });

  it('adds up in every total that is typed, and in every payment', () => {
    for (const { money, date, client } of visits) {
      if (money.claim !== undefined) expect(money.claim.amount, `${client.name} ${date}`).toBe(money.charged);
      if (money.paid > 0) expect(money.paid, `${client.name} ${date}`).toBe(money.due);
    }
  });

  it('names the same bowls on the clock as are mixed', () => {
    for (const { bowls, clock, date, client } of visits) {
      const mixed = new Set(bowls.map(({ name }) => name));
      for (const { bowl } of clock.runs) expect(mixed.has(bowl ?? ''), `${client.name} ${date} ${bowl}`).toBe(true);
    }
  });
});
