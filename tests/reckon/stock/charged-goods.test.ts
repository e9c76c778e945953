import { expect, test } from 'vitest';
import { chargedNotTaken } from '../../../src/reckon/stock/charged-goods.ts';
import { stockLedger } from '../../../src/reckon/stock/ledger.ts';
import { shelfState } from '../../../src/reckon/stock/shelf-state.ts';
import { reckonAll } from '../../../src/reckon/visit.ts';
import { journalOf } from '../journal-of.ts';

const SHELF = `salon
product mist "Sea mist" goods
  pack 1 each 4.00
product clip goods
  pack 1 each 1.00
stock 2026-09-01
  count mist 6
`;

const chargedIn = (notes: string): string[] => {
  const journal = journalOf(SHELF + notes);
  const reckoned = [...reckonAll(journal).values()].flat();
  const rows = shelfState(stockLedger(journal, reckoned, '2026-11-30'), '2026-11-30');
  return chargedNotTaken(journal, reckoned, rows, '2026-11-30').map(
    ({ item, client, date, place }) => `${date} ${client} ${item.name} ${place.line}`,
  );
};

test('goods charged by either name and taken by no line are listed, the line with them', () => {
  expect(chargedIn('visit 2026-09-02 wren\n charge foils 90\n charge mist 12\n')).toEqual(['2026-09-02 wren mist 2']);
  expect(chargedIn('visit 2026-09-02 wren\n charge sea mist 12\n')).toHaveLength(1);
});

test.each([
  ['taken by a line', 'visit 2026-09-02 wren\n fit 1 mist\n charge mist 12\n'],
  ['taken home', 'visit 2026-09-02 wren\n home 1 mist\n charge mist 12\n'],
  ['before the count that closes it', 'visit 2026-09-01 wren\n charge mist 12\n'],
  ['never counted', 'visit 2026-09-02 wren\n charge clip 2\n'],
  ['given', 'visit 2026-09-02 wren\n charge mist 0\n'],
  ['after the day', 'visit 2026-12-02 wren\n charge mist 12\n'],
  ['another thing', 'visit 2026-09-02 wren\n charge mist foils 12\n'],
])('nothing is said of goods %s', (_, notes) => {
  expect(chargedIn(notes)).toEqual([]);
});
