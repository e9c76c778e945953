import { describe, expect, it } from 'vitest';
import { clientTotals, stylistTotals, takings } from '../../src/reckon/takings.ts';
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

describe('takings', () => {
  it('add up by currency', () => {
    expect(takings(all, {})).toEqual([
      { currency: 'EUR', visits: 1, charged: 4200, discount: 0, paid: 4200, cost: 0, costUnknown: 0 },
      { currency: 'GBP', visits: 3, charged: 14601, discount: 1900, paid: 7600, cost: 2400, costUnknown: 1 },
    ]);
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
});

describe('clientTotals', () => {
  it('go by name and currency', () => {
    expect(clientTotals(all).map(({ name, currency, visits, charged }) => [name, currency, visits, charged])).toEqual([
      ['kit-hollin', 'GBP', 2, 7001],
      ['wren-abbott', 'EUR', 1, 4200],
      ['wren-abbott', 'GBP', 1, 7600],
    ]);
    expect(clientTotals(all, { to: '2025-09-01' })).toHaveLength(1);
  });
});

describe('stylistTotals', () => {
  it('share a visit by its split, to the penny', () => {
    expect(stylistTotals(all).map(({ name, currency, visits, charged }) => [name, currency, visits, charged])).toEqual([
      ['', 'GBP', 1, 1000],
      ['io', 'GBP', 2, 10601],
      ['nia', 'EUR', 1, 4200],
      ['nia', 'GBP', 1, 3000],
    ]);
    expect(stylistTotals(all, { from: '2025-10-02' })).toHaveLength(1);
  });
});
