import { describe, expect, it } from 'vitest';
import { marginOf, type NamedTakings, takings, takingsBy } from '../../src/reckon/money/takings.ts';
import { reckonAll } from '../../src/reckon/visit.ts';
import { journalOf } from './journal-of.ts';
import { WIDE_SHELF } from './reckoned.ts';

const NOTES = `salon harbour
money GBP
salon quay
money EUR
${WIDE_SHELF}
visit 2025-09-01 wren-abbott by io at harbour
bowl A 500 clay + 0 dev-6
charge foils 95
charge discount 20%
paid 76 card
visit 2025-09-02 wren-abbott by nia at quay
charge cut 42
paid 42 card
visit 2025-10-01 kit-hollin by io at harbour
bowl A 30 neon teal
charge brights 60.01
split io 50%, nia 50%
visit 2025-10-02 kit-hollin at harbour
charge trim 10
split io 0%
`;

const all = [...reckonAll(journalOf(NOTES)).values()].flat();

const text = ({ name, currency, visits, charged }: NamedTakings): unknown[] => [name, currency, visits, charged];

describe('takings', () => {
  it('add up by currency', () => {
    expect(takings(all, {})).toEqual([
      { currency: 'EUR', visits: 1, charged: 4200, discount: 0, paid: 4200, cost: 0, costUnknown: 0 },
      { currency: 'GBP', visits: 3, charged: 14601, discount: 1900, paid: 7600, cost: 2400, costUnknown: 1 },
    ]);
    expect(takings(all, {}).map(marginOf)).toEqual([4200, 12201]);
  });

  it('count only the period', () => {
    expect(takings(all, { from: '2025-10-01' })).toMatchObject([{ currency: 'GBP', visits: 2 }]);
    expect(takings(all, { from: '2026-01-01' })).toEqual([]);
  });

  it('stand without a currency where no salon names one', () => {
    const bare = [...reckonAll(journalOf('visit 2025-09-01 wren-abbott\ncharge cut 42')).values()].flat();
    expect(takings([...bare, ...bare], {})).toMatchObject([{ currency: undefined, visits: 2, charged: 8400 }]);
    expect(takings([...all, ...bare], {}).map(({ currency }) => currency)).toEqual([undefined, 'EUR', 'GBP']);
  });

  it('count what has a price where something else has none', () => {
    const part = `salon harbour\nmoney GBP\n${WIDE_SHELF}\nvisit 2025-09-01 wren-abbott\nbowl A 500 clay + 0 dev-6\nbowl B 30 neon teal`;
    expect(takings([...reckonAll(journalOf(part)).values()].flat(), {})).toMatchObject([
      { cost: 2400, costUnknown: 1 },
    ]);
  });
});

describe('what was received', () => {
  const received = (lines: string): number[] =>
    takings(
      [...reckonAll(journalOf(`salon harbour\nmoney GBP\nvisit 2025-09-01 wren-abbott\n${lines}`)).values()].flat(),
      {},
    ).map(({ paid }) => paid);

  it.each([
    ['a deposit beside the price paid', 'charge foils 180\ndeposit 75 for 2025-12-01\npaid 180 card', 25500],
    ['a deposit in what was paid', 'charge foils 180\ndeposit 75 for 2025-12-01\npaid 255 card', 25500],
    ['a deposit alone', 'deposit 75 for 2025-12-01', 7500],
    ['a deposit with its payment', 'deposit 75 for 2025-12-01\npaid 75 card', 7500],
    ['a deposit used, the rest paid', 'charge foils 180\ndeposit used 75\npaid 105 card', 10500],
    ['a deposit used, the whole price noted as paid', 'charge foils 180\ndeposit used 75\npaid 180 card', 10500],
    ['a deposit given back', 'deposit returned 75', -7500],
    ['a tip', 'charge foils 180\npaid 190 card', 19000],
    ['a part of the price and a deposit', 'charge foils 180\ndeposit 75\npaid 100 card', 17500],
    ['nothing noted', 'charge foils 180', 0],
  ])('counts %s', (_, lines, minor) => {
    expect(received(lines)).toEqual([minor]);
  });

  it('a deposit is received once, whether it is used later or not', () => {
    const visits =
      'visit 2025-09-01 ana-b\ndeposit 75 for 2025-10-01\nvisit 2025-10-01 ana-b\ncharge foils 180\ndeposit used 75\npaid 105 card';
    const all = [...reckonAll(journalOf(`salon harbour\nmoney GBP\n${visits}`)).values()].flat();
    expect(takingsBy(all, {}, 'month').map(({ name, paid }) => [name, paid])).toEqual([
      ['2025-09', 7500],
      ['2025-10', 10500],
    ]);
    expect(takings(all, {})).toMatchObject([{ charged: 18000, paid: 18000 }]);
  });
});

describe('takingsBy', () => {
  it('client goes by name and currency', () => {
    expect(takingsBy(all, {}, 'client').map(text)).toEqual([
      ['kit-hollin', 'GBP', 2, 7001],
      ['wren-abbott', 'EUR', 1, 4200],
      ['wren-abbott', 'GBP', 1, 7600],
    ]);
    expect(takingsBy(all, { to: '2025-09-01' }, 'client')).toHaveLength(1);
  });

  it('stylist shares a visit by its split, to the penny', () => {
    expect(takingsBy(all, {}, 'stylist').map(text)).toEqual([
      ['', 'GBP', 1, 1000],
      ['io', 'GBP', 2, 10601],
      ['nia', 'EUR', 1, 4200],
      ['nia', 'GBP', 1, 3000],
    ]);
  });

  it('service is the item charged for, and every grouping comes to the same', () => {
    expect(takingsBy(all, {}, 'service').map(text)).toEqual([
      ['brights', 'GBP', 1, 6001],
      ['cut', 'EUR', 1, 4200],
      ['foils', 'GBP', 1, 7600],
      ['trim', 'GBP', 1, 1000],
    ]);
    for (const by of ['visit', 'client', 'service', 'stylist', 'month'] as const) {
      const pounds = takingsBy(all, {}, by).filter(({ currency }) => currency === 'GBP');
      const sums = pounds
        .map((row) => [row.charged, row.cost])
        .reduce(([a = 0, b = 0], [c = 0, d = 0]) => [a + c, b + d]);
      expect([by, ...sums]).toEqual([by, 14601, 2400]);
    }
  });

  it('month and visit go by date', () => {
    expect(takingsBy(all, {}, 'month').map(({ name }) => name)).toEqual(['2025-09', '2025-09', '2025-10']);
    expect(takingsBy(all, { from: '2025-10-01' }, 'visit').map(({ name }) => name)).toEqual([
      '2025-10-01 kit-hollin',
      '2025-10-02 kit-hollin',
    ]);
  });
});
