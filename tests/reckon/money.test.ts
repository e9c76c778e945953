import { describe, expect, it } from 'vitest';
import type { MoneyReckoned } from '../../src/reckon/model.ts';
import { reckonMoney } from '../../src/reckon/money/money.ts';
import { exact } from '../../src/text/exact.ts';
import { journalOf, visitsOf } from './journal-of.ts';
import { lastOf } from './reckoned.ts';

const moneyOf = (lines: string, currency = 'GBP'): MoneyReckoned => {
  const journal = journalOf(`salon harbour\nmoney ${currency}\nvisit 2026-09-04 wren-abbott\n${lines}`);
  const [visit] = visitsOf(journal);
  if (visit === undefined) throw new Error('no visit');
  return reckonMoney(visit, [], journal.salon);
};

describe('what is charged', () => {
  it('adds up the items in pence', () => {
    const money = moneyOf('charge foils 95.00\ncharge gloss 38.5, cut 42');
    expect(money.items).toMatchObject([
      { item: 'foils', amount: 9500, place: { line: 1 } },
      { item: 'gloss', amount: 3850 },
      { item: 'cut', amount: 4200 },
    ]);
    expect(money).toMatchObject({ charged: 17550, discount: 0, due: 17550, claim: undefined, currency: 'GBP' });
  });

  it('keeps a typed total apart, as a claim', () => {
    expect(moneyOf('charge foils 95\ncharge total 82')).toMatchObject({
      charged: 9500,
      claim: { amount: 8200, place: { line: 2 } },
    });
  });

  it('takes a discount off what stands above it', () => {
    expect(moneyOf('charge foils 95\ncharge discount 20%\ncharge goods 10')).toMatchObject({
      charged: 8600,
      discount: 1900,
    });
    expect(moneyOf('charge foils 100\ncharge discount 10%\ncharge discount 10%')).toMatchObject({
      charged: 8100,
      discount: 1900,
    });
    expect(moneyOf('charge foils 95\ncharge loyalty discount 15')).toMatchObject({ charged: 8000, discount: 1500 });
    expect(moneyOf('charge foils 95\ncharge discount card 15')).toMatchObject({ charged: 11000, discount: 0 });
    expect(moneyOf('charge foils 95\ncharge discount 15')).toMatchObject({
      charged: 8000,
      discount: 1500,
      items: [{}],
    });
  });

  it('rounds a discount once, halves up', () => {
    expect(moneyOf('charge foils 0.25\ncharge discount 10%')).toMatchObject({ charged: 22, discount: 3 });
    expect(moneyOf('charge foils 0.24\ncharge discount 10%')).toMatchObject({ charged: 22, discount: 2 });
  });

  it('leaves out a line without an amount, which is kept as typed', () => {
    expect(moneyOf('charge foils\ncharge total\ncharge discount')).toMatchObject({
      items: [],
      charged: 0,
      claim: undefined,
    });
  });

  it('counts in the minor unit of the currency: ISO 4217', () => {
    expect(moneyOf('charge foils 95', 'JPY').charged).toBe(95);
    expect(moneyOf('charge foils 9.5', 'KWD').charged).toBe(9500);
  });
});

describe('what is paid', () => {
  it('adds up payments', () => {
    expect(moneyOf('charge foils 120\npaid 100 card, 20 cash\npaid card')).toMatchObject({ paid: 12000, due: 12000 });
  });

  it('adds a deposit taken, and takes off one used or given back', () => {
    expect(moneyOf('charge foils 95\ndeposit 60 for 2026-10-01')).toMatchObject({ depositTaken: 6000, due: 15500 });
    expect(moneyOf('charge foils 95\ndeposit used 60')).toMatchObject({ depositUsed: 6000, due: 3500 });
    expect(moneyOf('deposit 60 returned')).toMatchObject({ depositReturned: 6000, due: -6000 });
    expect(moneyOf('deposit used')).toMatchObject({ depositUsed: 0, due: 0 });
  });
});

describe('what the products cost', () => {
  it('is rounded once over all bowls', () => {
    // 30 g clay at 24.00/500 g is 144 p; 60 g dev-6 at 7.50/kg is 45 p; 1 g cream at 6.00/60 g is 10 p.
    expect(lastOf('visit 2025-09-04 wren-abbott\nbowl A 30 clay + 60 dev-6').money).toMatchObject({
      cost: 189,
      costMissing: [],
    });
    expect(
      lastOf('visit 2025-09-04 wren-abbott\nbowl A 0.1 clay + 0 dev-6\nbowl B 0.1 clay + 0 dev-6').money.cost,
    ).toBe(1);
  });

  it('is not known without a price, and says of what', () => {
    expect(
      lastOf('visit 2025-09-04 wren-abbott\nbowl A 30 neon teal + 10 water\nbowl B 30 neon teal').money,
    ).toMatchObject({
      cost: undefined,
      costMissing: ['neon teal'],
    });
    expect(lastOf('visit 2025-09-04 wren-abbott\nbowl A').money).toMatchObject({
      cost: undefined,
      costMissing: ['bowl A'],
    });
  });

  it('holds what is used outside any bowl', () => {
    expect(lastOf('visit 2025-09-04 wren-abbott\nbowl A 30 clay + 60 dev-6\nfit 2 goods-a').money.cost).toBe(
      189 + 2900,
    );
    const journal = journalOf('visit 2026-09-04 wren-abbott');
    const [visit] = visitsOf(journal);
    const use = { shade: undefined, mixed: exact(1), used: exact(1), left: exact(0), cost: undefined };
    expect(visit && reckonMoney(visit, [], journal.salon, [{ ...use, product: 'clip' }])).toMatchObject({
      cost: undefined,
      costMissing: ['clip'],
    });
  });
});
