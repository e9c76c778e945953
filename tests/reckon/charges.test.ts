import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type ChargedItem, chargedItems, knownCost } from '../../src/reckon/money/charges.ts';
import { lastOf } from './reckoned.ts';

const itemsOf = (lines: string): unknown[][] =>
  chargedItems(lastOf(`visit 2025-09-01 wren-abbott\n${lines}`)).map(({ item, charged, discount, cost }) => [
    item,
    charged,
    discount,
    cost,
  ]);

describe('chargedItems', () => {
  it('share the products by price', () => {
    expect(itemsOf('bowl A 500 clay + 0 dev-6\ncharge foils 90\ncharge cut 30')).toEqual([
      ['foils', 9000, 0, 2400],
      ['cut', 3000, 0, 0],
    ]);
    // 24.00 of clay over 90 and 30: 18.00 and 6.00.
    expect(itemsOf('bowl A 500 clay + 0 dev-6\ncharge foils 90\ncharge toner 30')).toEqual([
      ['foils', 9000, 0, 1800],
      ['toner', 3000, 0, 600],
    ]);
  });

  it.each(['cut', 'cut and blow-dry', 'fringe trim', 'haarschnitt', 'coupe brushing', 'corte', 'escova'])(
    'a %s bears no colour cost beside other work, and all of it alone',
    (item) => {
      expect(itemsOf(`bowl A 500 clay + 0 dev-6\ncharge foils 90\ncharge ${item} 30`)[1]).toEqual([item, 3000, 0, 0]);
      expect(itemsOf(`bowl A 500 clay + 0 dev-6\ncharge ${item} 30`)).toEqual([[item, 3000, 0, 2400]]);
    },
  );

  it.each(['cut and colour', 'cut line toner', 'foils'])('%s bears its share', (item) => {
    expect(itemsOf(`bowl A 500 clay + 0 dev-6\ncharge foils 90\ncharge ${item} 30`)[1]).toEqual([item, 3000, 0, 600]);
  });

  it('a price by no name is charged all the same, and its remark is no service', () => {
    expect(itemsOf('bowl A 500 clay + 0 dev-6\ncharge 185')).toEqual([['-', 18500, 0, 2400]]);
    expect(itemsOf('charge 40 "she paid in coins"')).toEqual([['-', 4000, 0, 0]]);
  });

  it('take a discount off what stands above it alone', () => {
    expect(itemsOf('charge foils 90\ncharge toner 30\ncharge discount 10%\ncharge cut 40')).toEqual([
      ['foils', 8100, 900, 0],
      ['toner', 2700, 300, 0],
      ['cut', 4000, 0, 0],
    ]);
    expect(itemsOf('charge foils 90\ncharge discount 5')).toEqual([['foils', 8500, 500, 0]]);
    expect(itemsOf('charge discount 5')).toEqual([['', -500, 500, 0]]);
  });

  it('a total is a claim and no item', () => {
    expect(itemsOf('charge foils 90\ncharge total 90')).toHaveLength(1);
  });

  it('goods by the piece bear their own cost', () => {
    expect(itemsOf('bowl A 500 clay + 0 dev-6\nfit 2 goods-a\ncharge foils 95\ncharge Goods-A 60')).toEqual([
      ['foils', 9500, 0, 2400],
      ['goods-a', 6000, 0, 2900],
    ]);
    expect(itemsOf('fit 2 goods-a\ncharge foils 95')).toEqual([['foils', 9500, 0, 2900]]);
  });

  it('goods without a price bear nothing, and a second line of the same goods bears no more', () => {
    const clip = 'product clip goods\n  pack 1 each\n';
    const visit = lastOf(
      `${clip}visit 2025-09-01 wren-abbott\nfit 2 clip\nfit 1 goods-a\ncharge clip 8\ncharge goods-a 20`,
    );
    expect(chargedItems(visit).map(({ item, cost }) => [item, cost])).toEqual([
      ['clip', 0],
      ['goods-a', 1450],
    ]);
    expect(itemsOf('fit 2 goods-a\ncharge goods-a 20\ncharge goods-a 20')).toEqual([
      ['goods-a', 2000, 0, 2900],
      ['goods-a', 2000, 0, 0],
    ]);
  });

  it('a visit that charges for nothing still has its cost, and one of free items shares it evenly', () => {
    expect(itemsOf('bowl A 500 clay + 0 dev-6')).toEqual([['', 0, 0, 2400]]);
    expect(itemsOf('bowl A 500 clay + 0 dev-6\ncharge foils 0\ncharge cut 0')).toEqual([
      ['foils', 0, 0, 2400],
      ['cut', 0, 0, 0],
    ]);
    expect(itemsOf('bowl A 500 clay + 0 dev-6\ncharge foils 0\ncharge toner 0')).toEqual([
      ['foils', 0, 0, 1200],
      ['toner', 0, 0, 1200],
    ]);
  });

  it('add up to the visit, whatever is charged and taken off', () => {
    const line = fc.oneof(
      fc.nat({ max: 20000 }).map((pence) => `charge cut ${(pence / 100).toFixed(2)}`),
      fc.nat({ max: 99 }).map((percent) => `charge discount ${percent}%`),
      fc.constant('charge goods-a 20'),
    );
    fc.assert(
      fc.property(fc.array(line, { maxLength: 6 }), fc.integer({ min: 1, max: 300 }), (lines, clay) => {
        const visit = lastOf(
          `visit 2025-09-01 wren-abbott\nbowl A ${clay} clay + ${2 * clay} dev-6\nfit 1 goods-a\n${lines.join('\n')}`,
        );
        const items = chargedItems(visit);
        const of = (key: Exclude<keyof ChargedItem, 'item'>): number =>
          items.reduce((whole, one) => whole + one[key], 0);
        expect([of('charged'), of('discount'), of('cost')]).toEqual([
          visit.money.charged,
          visit.money.discount,
          knownCost(visit),
        ]);
      }),
      { numRuns: 100 },
    );
  });
});
