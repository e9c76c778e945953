import { describe, expect, it } from 'vitest';
import { corrections } from '../../src/reckon/money/corrections.ts';
import { reckonAll } from '../../src/reckon/visit.ts';
import { toFixed } from '../../src/text/exact.ts';
import { journalOf } from './journal-of.ts';
import { reckonedOf } from './reckoned.ts';

const found = (notes: string): unknown[][] =>
  corrections(reckonedOf(notes), {}).map(({ kind, visit, of, ofStylist, mixed, cost }) => [
    kind,
    visit.date,
    of,
    ofStylist,
    toFixed(mixed, 0),
    cost,
  ]);

describe('corrections', () => {
  it('a redo names the visit put right, and whose it was', () => {
    expect(
      found(
        'visit 2025-09-01 wren-abbott by io\nbowl A 30 clay + 60 dev-6\nvisit 2025-09-04 wren-abbott by nia\nredo 2025-09-01\nbowl A 500 clay + 0 dev-6\nfit 1 goods-a',
      ),
    ).toEqual([['redo', '2025-09-04', '2025-09-01', 'io', '500', 3850]]);
  });

  it('a redo of a visit that is not in the notes names nobody', () => {
    expect(found('visit 2025-09-04 wren-abbott\nredo 2025-09-01')).toEqual([
      ['redo', '2025-09-04', '2025-09-01', undefined, '0', 0],
    ]);
  });

  it('stand by day and then by client, whatever the order of the notes', () => {
    const notes = journalOf(
      'visit 2025-09-02 wren-abbott\naim correct the band\nvisit 2025-09-01 wren-abbott\nredo 2025-08-20\nvisit 2025-09-01 kit-hollin\naim correction',
    );
    expect(
      corrections([...reckonAll(notes).values()].flat(), {}).map(({ visit }) => [visit.date, visit.client.name]),
    ).toEqual([
      ['2025-09-01', 'kit-hollin'],
      ['2025-09-01', 'wren-abbott'],
      ['2025-09-02', 'wren-abbott'],
    ]);
  });

  it.each(['aim correct the band', 'aim Colour correction', 'charge colour-correction 140', 'charge correction 140'])(
    '`%s` is a correction',
    (line) => {
      expect(found(`visit 2025-09-01 wren-abbott\n${line}`)).toEqual([
        ['correction', '2025-09-01', undefined, undefined, '0', 0],
      ]);
    },
  );

  it.each(['aim incorrectly parted last time', 'charge foils 95', 'note correction next time'])(
    '`%s` is none',
    (line) => {
      expect(found(`visit 2025-09-01 wren-abbott\n${line}`)).toEqual([]);
    },
  );
});
