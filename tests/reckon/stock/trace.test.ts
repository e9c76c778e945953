import { describe, expect, test } from 'vitest';
import { touchingVisits } from '../../../src/reckon/stock/touching.ts';
import { traceable, traceClient, traceLot } from '../../../src/reckon/stock/trace.ts';
import { journalOf } from '../journal-of.ts';

const SHELF = `salon quay
range cream permanent
  mix 1:1
  tones 0 natural, 1 ash
  pack 60 g 6.00
product clay lightener
  mix 1:2
  pack 500 g 25.00
product dev-6 developer 6%
  pack 1 kg 8.00
product dev-9 developer 9%
  pack 1 kg 8.00
product wash conditioner
  mix none
  pack 1 l 10.00
`;

const traceOf = (notes: string, lot = 'K1'): string[] => {
  const journal = journalOf(SHELF + notes);
  const { traced } = traceLot(traceable(journal, touchingVisits(journal)), lot);
  return traced.map(
    ({ touch, certainty }) => `${touch.date} ${touch.client} ${touch.how} ${touch.label}: ${certainty}`,
  );
};

const IN = 'stock 2026-02-01\n in clay 1 pack lot K1\n';

test('recorded where the component names the lot, possible where it names none, nothing where it names another', () => {
  const notes = `${IN}stock 2026-02-01
 in clay 1 pack lot K2
visit 2026-02-02 wren
 bowl A 40 clay lot k1 + 80 dev-6
visit 2026-02-03 ines
 bowl A 40 clay + 80 dev-6
visit 2026-02-04 orla
 bowl A 40 clay lot K2 + 80 dev-6`;
  expect(traceOf(notes)).toEqual(['2026-02-02 wren bowl clay: recorded', '2026-02-03 ines bowl clay: possible']);
});

test('a lot is possible from the day it came in, that day too, and not before', () => {
  const visits = ['2026-01-31', '2026-02-01'].map((date) => `visit ${date} wren\n bowl A 40 clay + 80 dev-6\n`);
  expect(traceOf(IN + visits.join(''))).toEqual(['2026-02-01 wren bowl clay: possible']);
});

test('a lot that the note names and no delivery brought may be a slip for any', () => {
  expect(traceOf(`${IN}visit 2026-02-02 wren\n bowl A 40 clay lot K7 + 80 dev-6`)).toEqual([
    '2026-02-02 wren bowl clay: possible',
  ]);
});

test('a shade is another product, and a bowl that gives no shade may be any', () => {
  const notes = `stock 2026-02-01
 in cream 7/0 1 pack lot K1
visit 2026-02-02 wren
 bowl A 30 cream 7/0 + 30 dev-6
visit 2026-02-03 ines
 bowl A 30 cream 7/1 + 30 dev-6
visit 2026-02-04 orla
 bowl A 30 cream + 30 dev-6`;
  expect(traceOf(notes)).toEqual(['2026-02-02 wren bowl cream 7/0: possible', '2026-02-04 orla bowl cream: possible']);
});

test('a misspelt name, a bowl of unknown content and an unsettled developer leave the lot possible', () => {
  const clay = `${IN}visit 2026-02-02 wren
 bowl A 40 caly + 80 dev-6
visit 2026-02-03 ines
 again A from 2020-01-01`;
  expect(traceOf(clay)).toEqual(['2026-02-02 wren bowl caly: possible', '2026-02-03 ines bowl bowl A: possible']);
  const developer = 'stock 2026-02-01\n in dev-6 1 pack lot K1\nvisit 2026-02-02 wren\n bowl A 40 clay + 80 ml 12%';
  expect(traceOf(developer)).toHaveLength(1);
});

test('a bowl made again, a further mix and what another bowl gave are followed', () => {
  const notes = `visit 2026-01-02 wren
 bowl A 40 clay + 80 dev-6
${IN}visit 2026-02-02 wren
 again A from 2026-01-02
 more A 60
 bowl C 20 from A + 5 wash`;
  expect(traceOf(notes)).toEqual(['2026-02-02 wren bowl clay: possible', '2026-02-02 wren bowl clay: possible']);
});

test('a bowl made again keeps its lot while that can be there, and can be another’s beside it', () => {
  const notes = `${IN}stock 2026-02-20
 in clay 1 pack lot K2
visit 2026-02-02 wren
 bowl A 40 clay lot K1 + 80 dev-6
 more A 60
visit 2026-03-02 wren
 again A from 2026-02-02`;
  const [then, more] = ['2026-02-02 wren bowl clay: recorded', '2026-02-02 wren bowl clay: recorded'];
  expect(traceOf(notes)).toEqual([then, more, '2026-03-02 wren bowl clay: recorded']);
  // Another tub may be open a month later; within the visit it is the same one.
  expect(traceOf(notes, 'K2')).toEqual(['2026-03-02 wren bowl clay: possible']);
  const closed = `${notes}\nstock 2026-02-25\n count clay 0 g lot K1`;
  expect(traceOf(closed)).toEqual([then, more]);
  expect(traceOf(closed, 'K2')).toEqual(['2026-03-02 wren bowl clay: possible']);
});

test('a bowl that names another lot is not possible, unless the name is a slip for this one', () => {
  const bowl = (lot: string): string =>
    `${IN.replace('K1', 'K2231')}visit 2026-02-02 wren\n bowl A 40 clay lot ${lot} + 80 dev-6`;
  expect(traceOf(bowl('M9040'), 'K2231')).toEqual([]);
  expect(traceOf(bowl('K2213'), 'K2231')).toEqual(['2026-02-02 wren bowl clay: possible']);
});

test('a lot counted as none by its name is closed, though another lot of it is used on', () => {
  const notes = `${IN}stock 2026-02-10
 in clay 1 pack lot K2
stock 2026-03-01
 count clay 0 g lot K1
visit 2026-02-20 ines
 bowl A 40 clay + 80 dev-6
`;
  expect(traceOf(notes + AFTER)).toEqual(['2026-02-20 ines bowl clay: possible']);
  const named = 'visit 2026-03-05 orla\n bowl A 40 clay lot K1 + 80 dev-6\n';
  expect(traceOf(notes + named + AFTER)).toEqual([
    '2026-02-20 ines bowl clay: possible',
    '2026-03-05 orla bowl clay: recorded',
    '2026-04-01 wren bowl clay: possible',
  ]);
});

describe('with two salons', () => {
  const TWO = `${SHELF}salon shore\nstylist io at shore\nstylist jo\n`;
  const inTwo = (notes: string): string[] => {
    const journal = journalOf(TWO + notes);
    return traceLot(traceable(journal, touchingVisits(journal)), 'K1').traced.map(
      ({ touch, certainty }) => `${touch.client}: ${certainty}`,
    );
  };
  const CAME = 'stock 2026-02-01 at shore\n in clay 1 pack lot K1\n';
  const bowl = (where: string, client: string, lot = ''): string =>
    `visit 2026-02-02 ${client}${where}\n bowl A 40 clay${lot} + 80 dev-6\n`;

  test('what came in to one is not possible in the other, and a visit of neither can be both', () => {
    expect(
      inTwo(
        CAME +
          bowl(' at shore', 'a-a') +
          bowl(' at quay', 'b-b') +
          bowl(' by io', 'c-c') +
          bowl('', 'd-d') +
          bowl(' by jo', 'e-e'),
      ),
    ).toEqual(['a-a: possible', 'c-c: possible', 'd-d: possible', 'e-e: possible']);
  });

  test('a lot that a bowl names in the other salon was carried there', () => {
    expect(inTwo(CAME + bowl(' at quay', 'a-a', ' lot K1') + bowl(' at quay', 'b-b'))).toEqual([
      'a-a: recorded',
      'b-b: possible',
    ]);
  });

  test('a delivery to no salon by name can be of either', () => {
    expect(inTwo(CAME.replace(' at shore', '') + bowl(' at shore', 'a-a') + bowl(' at quay', 'b-b'))).toHaveLength(2);
  });

  test('none left in one salon does not close the other', () => {
    const both = `${CAME}${CAME.replace('shore', 'quay')}stock 2026-02-01 at shore\n in clay 1 pack lot K2\n count clay 0 g lot K1\n`;
    expect(inTwo(both + bowl(' at shore', 'a-a') + bowl(' at quay', 'b-b'))).toEqual(['b-b: possible']);
  });
});

test('washes, what goes home and tests touch too, with no weight noted', () => {
  const notes = `stock 2026-02-01
 in wash 1 pack lot K1
client wren
 test skin 2026-02-01 11:00 wash
visit 2026-02-02 wren
 wash wash
 home 100 wash lot K1`;
  expect(traceOf(notes)).toEqual([
    '2026-02-01 wren test wash: possible',
    '2026-02-02 wren step wash: possible',
    '2026-02-02 wren home wash: recorded',
  ]);
});

const AFTER = 'visit 2026-04-01 wren\n bowl A 40 clay + 80 dev-6\n';

test('a lot counted as none is gone from then on', () => {
  expect(
    traceOf(
      `${IN}stock 2026-03-01\n count clay 0 g lot K1\n in clay 1 pack lot K2\nstock 2026-03-02\n in clay 1 pack\n${AFTER}`,
    ),
  ).toEqual([]);
  expect(traceOf(`${IN}stock 2026-03-01\n count clay 0 g\nstock 2026-03-02\n in clay 1 pack lot K2\n${AFTER}`)).toEqual(
    [],
  );
});

test('a count of none that the next bowl belies does not clear the lot', () => {
  expect(traceOf(`${IN}stock 2026-03-01\n count clay 0 g\n${AFTER}`)).toEqual(['2026-04-01 wren bowl clay: possible']);
});

test('a lot that no delivery brought is traced by the bowls that name it, over all days', () => {
  const notes = `visit 2026-01-01 ines
 bowl A 40 clay + 80 dev-6
visit 2026-02-02 wren
 bowl A 40 clay lot K1 + 80 dev-6`;
  expect(traceOf(notes)).toEqual(['2026-01-01 ines bowl clay: possible', '2026-02-02 wren bowl clay: recorded']);
});

test('a lot that is nowhere has near names', () => {
  const journal = journalOf(`${SHELF}stock 2026-02-01\n in clay 1 pack lot K2231\n`);
  const trace = traceLot(traceable(journal, touchingVisits(journal)), 'K2213');
  expect([trace.wares, trace.near]).toEqual([[], ['k2231']]);
});

test('the other way round: every lot that a client can have met', () => {
  const notes = `${IN}stock 2026-03-01
 in clay 1 pack lot K2
 in dev-6 1 pack lot D1
visit 2026-02-02 wren
 bowl A 40 clay + 80 dev-6
visit 2026-03-02 wren
 bowl A 40 clay + 80 dev-6 lot D1`;
  const journal = journalOf(SHELF + notes);
  const client = journal.clients.get('wren');
  const touches = client && traceClient(traceable(journal, touchingVisits(journal)), client);
  expect(touches?.map(({ touch, recorded, possible }) => [touch.date, touch.label, recorded, possible])).toEqual([
    ['2026-02-02', 'clay', undefined, ['K1']],
    ['2026-02-02', 'dev-6', undefined, []],
    ['2026-03-02', 'clay', undefined, ['K1', 'K2']],
    ['2026-03-02', 'dev-6', 'D1', []],
  ]);
});

test('a lot that bowls give to another product too may be in all of that', () => {
  const notes = `${IN}visit 2026-01-02 wren
 bowl A 40 dev-6
visit 2026-02-03 ines
 bowl A 40 dev-6 lot K1
visit 2026-02-04 ida
 bowl A 30 cream 7/43`;
  const trace = traceLot(traceable(journalOf(SHELF + notes), touchingVisits(journalOf(SHELF + notes))), 'k1');
  expect(trace.wares.map(({ item, arrived }) => [item.name, arrived])).toEqual([
    ['clay', '2026-02-01'],
    ['dev-6', undefined],
  ]);
  expect(trace.traced.map(({ touch, certainty }) => [touch.client, certainty])).toEqual([
    ['wren', 'possible'],
    ['ines', 'recorded'],
  ]);
});

test('another lot counted as none does not clear this one', () => {
  const other = 'stock 2026-02-01\n in clay 1 pack lot K2\nstock 2026-03-01\n count clay 0 g lot K2\n';
  expect(traceOf(`${IN}${other}${AFTER}`)).toEqual(['2026-04-01 wren bowl clay: possible']);
});

test('two deliveries of a lot are one lot, and counts of it bring none', () => {
  const notes = `${IN}stock 2026-02-05
 in clay 1 pack lot K1
stock 2026-02-06
 count clay 1 pack lot K3
visit 2026-02-07 wren
 bowl A 40 clay + 80 dev-6`;
  const journal = journalOf(SHELF + notes);
  const client = journal.clients.get('wren');
  const touches = client && traceClient(traceable(journal, touchingVisits(journal)), client);
  expect(touches?.map(({ touch, possible }) => [touch.label, possible])).toEqual([
    ['clay', ['K1']],
    ['dev-6', []],
  ]);
});

test('a test is traced by its own day or the visit’s, and by every product of its mix', () => {
  const notes = `${IN}client wren
 test skin clay
visit 2026-02-02 wren
 test metal 40 clay lot K1 + 2
visit 2026-13-02 wren
 test strand clay`;
  expect(traceOf(notes)).toEqual(['2026-02-02 wren test clay: recorded']);
});

test('goods and what goes home are named with their shade', () => {
  const notes = `stock 2026-02-01
 in cream 7/1 1 pack lot K1
visit 2026-02-02 wren
 fit 10 g cream 7/1
 home 12 cream 7/1 lot K1
 home 12 + 5 wash`;
  expect(traceOf(notes)).toEqual([
    '2026-02-02 wren goods cream 7/1: possible',
    '2026-02-02 wren home cream 7/1: recorded',
  ]);
});
