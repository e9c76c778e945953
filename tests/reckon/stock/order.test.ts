import { describe, expect, it } from 'vitest';
import { figure } from '../../../src/reckon/say.ts';
import { expectedVisits } from '../../../src/reckon/stock/expected.ts';
import { stockLedger } from '../../../src/reckon/stock/ledger.ts';
import { orderRows } from '../../../src/reckon/stock/order.ts';
import { shelfState, wareName } from '../../../src/reckon/stock/shelf-state.ts';
import { reckonAll } from '../../../src/reckon/visit.ts';
import { journalOf } from '../journal-of.ts';

const SHELF = `salon
  money GBP
product clay lightener
  mix 1:2
  pack 500 g 25.00
product soft-clay lightener
  mix 1:2
  pack 500 g
product loose-clay lightener
  mix 1:2
product dev-6 developer 6%
  pack 1 kg 8.00
  reorder at 200 g
`;

const ordered = (notes: string, paced = true): string[] => {
  const [on, until] = ['2026-11-25', '2026-12-23'];
  const journal = journalOf(SHELF + notes);
  const all = reckonAll(journal);
  const rows = shelfState(stockLedger(journal, [...all.values()].flat(), on), on);
  return orderRows(rows, expectedVisits(journal.shelf, all, on, until), on, until, paced).map(
    ({ row, byPace, byClients, packs, cost }) =>
      [wareName(row.line), figure(byPace), figure(byClients), packs ?? '-', cost ? figure(cost) : '-'].join(' '),
  );
};

const visit = (client: string, bowl: string, rest = ''): string =>
  `visit 2026-10-28 ${client}\n  bowl A ${bowl}\n${rest}\n`;

describe('an order', () => {
  it('adds up what the clients awaited are likely to take, and leaves alone what is not on the shelf', () => {
    const notes =
      visit('ann-a', '40 clay + 80 dev-6', '  next 6w') +
      visit('bo-b', '60 clay + 120 dev-6', '  next 6w') +
      visit('cy-c', '40 caly + clay', '  next 6w');
    expect(ordered(notes, false)).toEqual(['clay 0 100 1 2500', 'dev-6 0 200 1 800']);
  });

  it('has no packs without a pack, and no cost without a price', () => {
    const notes = visit('ann-a', '40 soft-clay + 80 loose-clay', '  next 6w');
    expect(ordered(notes, false)).toEqual(['loose-clay 0 80 - -', 'soft-clay 0 40 1 -']);
  });

  it('buys nothing for the level alone of what nobody has used for long', () => {
    const count = 'stock 2025-01-01\n  count dev-6 100 g\n';
    expect(ordered(count)).toEqual([]);
    expect(ordered(`${count}${visit('ann-a', '40 clay + 80 dev-6', '  next 6w')}`, false)).toEqual([
      'clay 0 40 1 2500',
      'dev-6 0 80 1 800',
    ]);
  });

  it('buys nothing that is not counted and nobody needs', () => {
    expect(ordered(visit('ann-a', '40 clay + 80 dev-6'), false)).toEqual([]);
  });
});

describe('what would outlive its time once open', () => {
  const KEEPS = 'product slow lightener\n  mix 1:2\n  pack 500 g 25.00\n  keeps 26w\n  reorder at 100 g\n';
  /** On hand 90 g, below the level, after some grams on each of these days. */
  const rowsOf = (uses: readonly (readonly [date: string, grams: number])[]) => {
    const [on, until] = ['2026-11-25', '2026-12-23'];
    const used = uses.map(([date, grams]) => `visit ${date} ann-a\n  bowl A ${grams} slow\n`).join('');
    const journal = journalOf(
      `${SHELF}${KEEPS}stock 2025-11-01\n  in clay 1 pack\n${used}stock 2026-11-24\n  count slow 90 g\n`,
    );
    const all = reckonAll(journal);
    const rows = shelfState(stockLedger(journal, [...all.values()].flat(), on), on);
    return orderRows(rows, [], on, until).filter(({ row }) => wareName(row.line) === 'slow');
  };

  it('is named and not bought: 26 weeks use 150 g of a pack of 500 g', () => {
    // The first is more than 26 weeks (182 days) before 25 November.
    const [row] = rowsOf([
      ['2026-05-20', 400],
      ['2026-06-10', 100],
      ['2026-10-10', 50],
    ]);
    expect([
      row?.outlives,
      row?.packs,
      row?.cost && figure(row.cost),
      row?.row.inKeeps && figure(row.row.inKeeps),
    ]).toEqual([true, 0, '0', '150']);
  });

  it('is bought where a pack is used up in time', () => {
    const [row] = rowsOf([
      ['2026-06-10', 300],
      ['2026-10-10', 200],
    ]);
    expect([row?.outlives, row?.packs]).toEqual([false, 1]);
  });
});
