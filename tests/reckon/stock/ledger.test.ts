import { expect, test } from 'vitest';
import type { Journal } from '../../../src/journal/journal.ts';
import { figure } from '../../../src/reckon/say.ts';
import { expectedVisits } from '../../../src/reckon/stock/expected.ts';
import { type StockLine, stockLedger } from '../../../src/reckon/stock/ledger.ts';
import { orderRows } from '../../../src/reckon/stock/order.ts';
import { type ShelfRow, shelfState, wareName } from '../../../src/reckon/stock/shelf-state.ts';
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
