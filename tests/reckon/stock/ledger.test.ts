import { expect, test } from 'vitest';
import type { Journal } from '../../../src/journal/journal.ts';
import { figure } from '../../../src/reckon/say.ts';
import { expectedVisits } from '../../../src/reckon/stock/expected.ts';
import { type StockLine, stockLedger } from '../../../src/reckon/stock/ledger.ts';
import { orderRows } from '../../../src/reckon/stock/order.ts';
import { daysNoted, type ShelfRow, shelfState, shelfValue, wareName } from '../../../src/reckon/stock/shelf-state.ts';
import { reckonAll } from '../../../src/reckon/visit.ts';
import { journalOf } from '../journal-of.ts';

const SHELF = `salon quay
  money GBP
  policy ml as g
range cream permanent
  mix 1:1
  tones 0 natural
  pack 60 g 6.00
  reorder at 1 pack
product clay lightener
  mix 1:2
  pack 500 g 25.00
  pack 500 g 30.00 from 2026-03-01
  keeps 6mo
  reorder at 200 g
product dev-6 developer 6%
  pack 1 kg 8.00
product wash conditioner
  mix none
  pack 1 l 10.00
product lengths goods
  pack 2 each 40.00
`;

const noted = (notes: string): Journal => journalOf(SHELF + notes);

const linesOf = (notes: string, upTo?: string): readonly StockLine[] => {
  const journal = noted(notes);
  return stockLedger(journal, [...reckonAll(journal).values()].flat(), upTo).lines;
};

const lineOf = (notes: string, name = 'clay', upTo?: string): StockLine => {
  const line = linesOf(notes, upTo).find((one) => wareName(one) === name);
  if (line === undefined) throw new Error(`no line of ${name}`);
  return line;
};

const rowOf = (notes: string, on: string, name = 'clay'): ShelfRow => {
  const journal = noted(notes);
  const ledger = stockLedger(journal, [...reckonAll(journal).values()].flat(), on);
  const row = shelfState(ledger, on).find(({ line }) => wareName(line) === name);
  if (row === undefined) throw new Error(`no row of ${name}`);
  return row;
};

const onHand = (notes: string, name?: string): string => figure(lineOf(notes, name).onHand);

const countsOf = (notes: string, name?: string): string[] =>
  lineOf(notes, name).counts.map(
    ({ date, expected, counted, first }) => `${date} ${figure(expected)} ${figure(counted)}${first ? ' first' : ''}`,
  );

const batchesOf = (notes: string, name?: string): string[] =>
  lineOf(notes, name).batches.map(({ lot, left }) => `${lot ?? '-'} ${figure(left)}`);

test('a bowl takes what was mixed, not what was used: what is left goes in the bin, not back on the shelf', () => {
  expect(
    onHand('stock 2026-01-01\n in clay 1 pack\nvisit 2026-01-02 wren\n bowl A 40 clay + 80 dev-6\n left A 14 binned'),
  ).toBe('460');
});

test('what the scales said counts before what was meant', () => {
  expect(
    onHand('stock 2026-01-01\n in clay 1 pack\nvisit 2026-01-02 wren\n bowl A 40 clay + 80 dev-6\n weighed A 43 clay'),
  ).toBe('457');
});

test('home, fit and a step with a product and an amount count too', () => {
  const notes = `stock 2026-01-01
 in wash 1 pack
 in lengths 3 packs
visit 2026-01-02 wren
 wash 15 wash
 home 100 wash
 fit 1 pack lengths`;
  expect(onHand(notes, 'wash')).toBe('885');
  expect(onHand(notes, 'lengths')).toBe('4');
});

test('what goes home out of a bowl left the shelf when it was mixed, and does not leave it again', () => {
  const notes = 'stock 2026-01-01\n in wash 1 pack\nvisit 2026-01-02 wren\n bowl N 60 wash\n left N 12 given\n';
  expect(onHand(notes, 'wash')).toBe('940');
  expect(onHand(`${notes} home N 12`, 'wash')).toBe('940');
  expect(onHand(`${notes} home N 12 + 100 wash`, 'wash')).toBe('840');
});

test('what is taken out of one bowl into another leaves the shelf once', () => {
  expect(
    onHand(
      'stock 2026-01-01\n in clay 1 pack\nvisit 2026-01-02 wren\n bowl A 40 clay + 80 dev-6\n bowl C 30 from A + 10 clay',
    ),
  ).toBe('450');
});

test('a count sets the level and keeps the difference; the first has nothing to compare with', () => {
  const notes = `stock 2026-01-01
 count clay 500 g
visit 2026-01-02 wren
 bowl A 40 clay + 80 dev-6
stock 2026-01-03
 count clay 450 g
stock 2026-01-04
 count clay 455 g`;
  expect(countsOf(notes)).toEqual(['2026-01-01 0 500 first', '2026-01-03 460 450', '2026-01-04 450 455']);
  const line = lineOf(notes);
  expect([figure(line.onHand), figure(line.unexplained), figure(line.unexplainedWithin)]).toEqual(['455', '-5', '1']);
});

test('a count closes its day', () => {
  const day = 'visit 2026-01-02 17:00 wren\n bowl A 40 clay + 80 dev-6\n';
  expect(countsOf(`stock 2026-01-01\n count clay 500 g\nstock 2026-01-02\n count clay 460 g\n${day}`).at(-1)).toBe(
    '2026-01-02 460 460',
  );
});

test('a count with a time in its header stands at that time', () => {
  const notes = `stock 2026-01-01
 count clay 500 g
visit 2026-01-02 11:00 wren
 bowl A 40 clay + 80 dev-6
stock 2026-01-02 13:00
 count clay 460 g
visit 2026-01-02 15:00 wren
 bowl A 30 clay + 60 dev-6`;
  expect(countsOf(notes).at(-1)).toBe('2026-01-02 460 460');
  expect(onHand(notes)).toBe('430');
});

test('two counts of a product in one entry add up: full packs, and the open one', () => {
  expect(onHand('stock 2026-01-01\n count clay 2 packs\n count clay 120 g')).toBe('1120');
});

test('half a pack may be a quarter off either way, a figure in grams half of the scales’ step', () => {
  const within = (amount: string): string[] =>
    lineOf(`stock 2026-01-01\n count cream 7/0 ${amount}`, 'cream 7/0').counts.map((one) => figure(one.within));
  expect(within('3½ packs')).toEqual(['15']);
  expect(within('3 packs')).toEqual(['30']);
  expect(within('200 g')).toEqual(['0.5']);
  expect(within('0.2 kg')).toEqual(['50']);
});

test('what is used beyond what came in is kept as short, and the next count settles it', () => {
  const notes = 'stock 2026-01-01\n in clay 30 g\nvisit 2026-01-02 wren\n bowl A 40 clay + 80 dev-6\n';
  expect(figure(lineOf(notes).onHand)).toBe('-10');
  expect(figure(lineOf(notes).short)).toBe('10');
  expect(onHand(`${notes}stock 2026-01-03\n count clay 5 g`)).toBe('5');
});

test('first expired, first out: a later delivery that expires sooner is used first', () => {
  const notes = `stock 2026-01-01
 in clay 1 pack lot LATE use-by 2028-01
stock 2026-01-02
 in clay 1 pack lot SOON use-by 2027-01
visit 2026-01-03 wren
 bowl A 40 clay + 80 dev-6`;
  expect(batchesOf(notes)).toEqual(['SOON 460', 'LATE 500']);
  expect(lineOf(notes).used.map(({ lots }) => lots)).toEqual([['SOON']]);
});

test('a bowl that names its lot takes that one', () => {
  const notes = `stock 2026-01-01
 in clay 1 pack lot LATE use-by 2028-01
 in clay 1 pack lot SOON use-by 2027-01
visit 2026-01-03 wren
 bowl A 40 clay lot late + 80 dev-6`;
  expect(batchesOf(notes)).toEqual(['SOON 500', 'LATE 460']);
});

test('a count that names a lot sets that lot alone', () => {
  const notes = `stock 2026-01-01
 in clay 1 pack lot OLD use-by 2027-01
 in clay 1 pack lot NEW use-by 2028-01
stock 2026-01-03
 count clay 0 g lot OLD`;
  expect(batchesOf(notes)).toEqual(['NEW 500']);
});

test('the price paid is the batch’s; without one it is the shelf’s price in force on the day', () => {
  const notes = `stock 2026-02-01
 in clay 1 pack
stock 2026-03-02
 in clay 1 pack
stock 2026-03-03
 in clay 1 pack 20.00`;
  expect(lineOf(notes).batches.map(({ price }) => price && figure(price))).toEqual(['5', '6', '4']);
  expect(figure(lineOf(notes).value.byBatch ?? { n: -1, d: 1 })).toBe('7500');
});

test('an opened pack is open since the day it was first used, and keeps as its line says', () => {
  const notes = `stock 2026-01-01
 in clay 2 packs
visit 2026-01-10 wren
 bowl A 40 clay + 80 dev-6
visit 2026-02-10 wren
 bowl A 460 clay + 920 dev-6
visit 2026-03-10 wren
 bowl A 30 clay + 60 dev-6`;
  expect(lineOf(notes, 'clay', '2026-01-31').batches[0]?.openedOn).toBe('2026-01-10');
  expect(lineOf(notes, 'clay', '2026-02-28').batches[0]?.openedOn).toBeUndefined();
  expect(lineOf(notes).batches[0]?.openedOn).toBe('2026-03-10');
  expect(rowOf(notes, '2026-09-11').passing.map(({ by, last, passed }) => [by, last, passed])).toEqual([
    ['opened', '2026-09-10', true],
  ]);
});

test('days of cover are by the pace of the last eight weeks', () => {
  const notes = `stock 2025-01-01
 in clay 1 pack
visit 2026-01-01 wren
 bowl A 100 clay + 200 dev-6
visit 2026-03-01 wren
 bowl A 56 clay + 112 dev-6`;
  const row = rowOf(notes, '2026-03-20');
  expect([figure(row.recent), figure(row.perDay), row.cover, row.below]).toEqual(['56', '1', 344, false]);
  expect(rowOf(`${notes}\nstock 2026-03-02\n out clay 150 g`, '2026-03-20').below).toBe(true);
});

test('stock past its use-by date is on hand and not usable', () => {
  const row = rowOf(
    'stock 2026-01-01\n in clay 1 pack lot A use-by 2026-02\n in clay 1 pack lot B use-by 2027-02',
    '2026-03-01',
  );
  expect([figure(row.line.onHand), figure(row.usable)]).toEqual(['1000', '500']);
  expect(row.passing.map(({ batch, passed }) => [batch.lot, passed])).toEqual([['A', true]]);
});

test('a line that cannot be weighed moves nothing and is named', () => {
  const journal = noted('stock 2026-01-01\n in caly 1 pack\n in cream 2 packs\n count dev-6 2 scoops\n');
  expect(stockLedger(journal, []).unmoved.map(({ name, why }) => `${name}: ${why}`)).toEqual([
    'caly: not-on-shelf',
    'cream: no-shade',
    'dev-6: no-weight',
  ]);
});

test('an order is whole packs for the larger of the pace and who is awaited, and keeps the reorder level back', () => {
  const notes = `stock 2026-01-01
 count clay 500 g
visit 2026-01-05 wren
 bowl A 200 clay + 400 dev-6
 next 4w foils, A +50%
visit 2026-01-06 ines
 bowl A 40 clay + 80 dev-6`;
  const journal = noted(notes);
  const all = reckonAll(journal);
  const [on, until] = ['2026-01-31', '2026-02-14'];
  const rows = shelfState(stockLedger(journal, [...all.values()].flat(), on), on);
  const expected = expectedVisits(journal.shelf, all, on, until);
  expect(expected.map(({ client, first, why, times }) => [client.name, first, why, times])).toEqual([
    ['wren', '2026-02-02', 'due', 1],
  ]);
  const [clay] = orderRows(rows, expected, on, until).filter(({ row }) => wareName(row.line) === 'clay');
  // 240 g in 31 days of notes is 108.4 g in 14 days; wren takes 300; 200 are kept back; 260 are there.
  expect(clay && [figure(clay.byPace, 1), figure(clay.byClients), clay.packs, clay.cost && figure(clay.cost)]).toEqual([
    '108.4',
    '300',
    1,
    '2500',
  ]);
});

const ledgerOf = (notes: string, upTo?: string) => {
  const journal = noted(notes);
  return stockLedger(journal, [...reckonAll(journal).values()].flat(), upTo);
};

const UNPRICED = 'product chalk lightener\n  mix 1:2\n  pack 500 g\n';

test('what came in without a price is worth nothing by batch, and leaves the weighted price as it was', () => {
  const paid = `${UNPRICED}stock 2026-01-01\n in chalk 1 pack 20.00\n`;
  const worth = (notes: string): (string | undefined)[] => {
    const { value } = lineOf(notes, 'chalk');
    return [value.byBatch, value.weighted].map((one) => one && figure(one));
  };
  expect(worth(paid)).toEqual(['2000', '2000']);
  expect(worth(`${paid}stock 2026-01-02\n in chalk 1 pack\n`)).toEqual([undefined, '4000']);
  expect(worth(`${UNPRICED}stock 2026-01-01\n in chalk 1 pack\n`)).toEqual([undefined, undefined]);
  expect(worth(`${UNPRICED}stock 2026-01-01\n count chalk 0 g\n`)).toEqual(['0', '0']);
});

test('the shelf is worth what its kept rows are, and names what has no price', () => {
  const notes = `${UNPRICED}stock 2026-01-01
 in chalk 1 pack
 in clay 1 pack
visit 2026-01-02 wren
 bowl A 40 clay + 80 dev-6`;
  const { value, unpriced } = shelfValue(shelfState(ledgerOf(notes, '2026-01-31'), '2026-01-31'));
  expect([figure(value), unpriced]).toEqual(['2300', ['chalk']]);
});

test('days noted run from the first use or count to the day, both counted', () => {
  expect(daysNoted(ledgerOf(''), '2026-01-31')).toBe(1);
  expect(daysNoted(ledgerOf('stock 2026-01-22\n count clay 500 g'), '2026-01-31')).toBe(10);
  expect(daysNoted(ledgerOf('visit 2026-01-12 wren\n bowl A 40 clay + 80 dev-6'), '2026-01-31')).toBe(20);
});

test('what is noted after the day is not on the shelf yet', () => {
  const notes = `stock 2026-01-01
 in clay 1 pack
stock 2026-02-01
 in clay 1 pack
visit 2026-02-02 wren
 bowl A 40 clay + 80 dev-6`;
  expect(['2026-01-31', '2026-02-01', '2026-02-02'].map((day) => figure(lineOf(notes, 'clay', day).onHand))).toEqual([
    '500',
    '1000',
    '960',
  ]);
});

test('a count in one entry sets a lot that it names, and the rest by the line that names none', () => {
  const notes = `stock 2026-01-01
 in clay 1 pack lot OLD use-by 2027-01
 in clay 1 pack lot NEW use-by 2028-01
 in clay 1 pack
stock 2026-01-03
 count clay 100 g
 count clay 30 g lot OLD`;
  expect(batchesOf(notes)).toEqual(['OLD 30', 'NEW 100']);
  expect(countsOf(notes).length).toBe(2);
});

test('of batches that last as long, the one that came in first is used first', () => {
  const notes = `stock 2026-01-05
 in clay 1 pack lot B use-by 2027-01
stock 2026-01-02
 in clay 1 pack lot A use-by 2027-01
visit 2026-01-06 wren
 bowl A 40 clay + 80 dev-6`;
  expect(batchesOf(notes)).toEqual(['A 460', 'B 500']);
});

test('a bowl of a range that gives no shade takes nothing off the shelf', () => {
  const notes = 'stock 2026-01-01\n in cream 7/0 1 pack\nvisit 2026-01-02 wren\n bowl A 30 cream + 30 dev-6';
  expect(linesOf(notes).map((line) => `${wareName(line)} ${figure(line.onHand)}`)).toEqual([
    'cream 7/0 60',
    'dev-6 -30',
  ]);
});

test('lines stand by salon, by product, by depth, then by shade, one without a shade first', () => {
  const notes = `salon dock
range toner toner
  mix 1:1
  shades clear, pearl
  pack 60 g
stock 2026-01-01 at quay
 in toner pearl 1 pack
 in toner clear 1 pack
 in toner 10/1 1 pack
 in toner 9/1 1 pack
 in clay grey-blue 1 pack
 in clay 1 pack
stock 2026-01-02 at dock
 in dev-6 1 pack`;
  expect(linesOf(notes).map((line) => `${line.salon.name} ${wareName(line)}`)).toEqual([
    'dock dev-6',
    'quay clay',
    'quay clay grey-blue',
    'quay toner clear',
    'quay toner pearl',
    'quay toner 9/1',
    'quay toner 10/1',
  ]);
});

test('a part of a pack that no small share makes is a tenth off at most', () => {
  const within = (amount: string): string[] =>
    lineOf(`stock 2026-01-01\n count cream 7/0 ${amount}`, 'cream 7/0').counts.map((one) => figure(one.within));
  expect(within('0.3 packs')).toEqual(['3']);
  expect(within('0.25 packs')).toEqual(['7.5']);
});

test('a use-by date is a day, the end of a month or of a year', () => {
  const until = (when: string): (string | undefined)[] =>
    lineOf(`stock 2026-01-01\n in clay 1 pack use-by ${when}`).batches.map(({ useBy }) => useBy);
  expect(['2027-02-10', '2027-02', '2027'].map(until)).toEqual([['2027-02-10'], ['2027-02-28'], ['2027-12-31']]);
});

test('goods by the piece in grams, a line without an amount, and an entry without its day move nothing', () => {
  expect(
    ledgerOf('stock 2026-01-01\n in lengths 40 g\n in clay\nstock 2026-13-01\n in clay 1 pack\n').unmoved.map(
      ({ name, why }) => `${name}: ${why}`,
    ),
  ).toEqual(['lengths: no-weight', 'clay: no-amount']);
  expect(linesOf('stock 2026-13-01\n in clay 1 pack\n')).toEqual([]);
});
