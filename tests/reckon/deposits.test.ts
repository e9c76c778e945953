import { describe, expect, it } from 'vitest';
import { depositsHeld } from '../../src/reckon/money/deposits.ts';
import { reckonAll } from '../../src/reckon/visit.ts';
import { journalOf } from './journal-of.ts';

const heldOn = (day: string, notes: string): unknown[][] =>
  depositsHeld([...reckonAll(journalOf(`salon harbour\nmoney GBP\n${notes}`)).values()].flat(), day).map(
    ({ client, taken, for: of, amount }) => [client.name, taken, of, amount],
  );

const TWO = `visit 2025-09-01 wren-abbott
deposit 60 for 2025-11-01
deposit 40 for 2025-10-01
visit 2025-10-01 wren-abbott
deposit used 40
`;

describe('depositsHeld', () => {
  it('are those of the notes up to the day', () => {
    expect(heldOn('2025-08-31', TWO)).toEqual([]);
    expect(heldOn('2025-09-01', TWO)).toEqual([
      ['wren-abbott', '2025-09-01', '2025-10-01', 4000],
      ['wren-abbott', '2025-09-01', '2025-11-01', 6000],
    ]);
  });

  it('are spent on the day they are for before the oldest', () => {
    expect(heldOn('2025-10-01', TWO)).toEqual([['wren-abbott', '2025-09-01', '2025-11-01', 6000]]);
  });

  it('may be used in part, or given back', () => {
    const part = `${TWO}visit 2025-10-20 wren-abbott\ndeposit used 25\n`;
    expect(heldOn('2025-10-31', part)).toEqual([['wren-abbott', '2025-09-01', '2025-11-01', 3500]]);
    expect(heldOn('2025-10-31', `${part}visit 2025-10-21 wren-abbott\ndeposit returned 35`)).toEqual([]);
  });

  it('one that was used and never noted as taken takes nothing from another client', () => {
    expect(
      heldOn('2025-12-31', 'visit 2025-09-01 kit-hollin\ndeposit 20\nvisit 2025-09-02 wren-abbott\ndeposit used 50'),
    ).toEqual([['kit-hollin', '2025-09-01', undefined, 2000]]);
  });

  it('a line without an amount holds nothing', () => {
    expect(heldOn('2025-12-31', 'visit 2025-09-01 wren-abbott\ndeposit for 2025-10-01')).toEqual([]);
  });

  it('stand by the day they are for, those for no day first, then by client', () => {
    expect(
      heldOn(
        '2025-12-31',
        'visit 2025-09-01 wren-abbott\ndeposit 10 for 2026-01-05\nvisit 2025-09-02 kit-hollin\ndeposit 20 for 2026-01-05\nvisit 2025-09-03 marlo-fenwick\ndeposit 30\nvisit 2025-09-04 ines-quill\ndeposit 40',
      ),
    ).toEqual([
      ['ines-quill', '2025-09-04', undefined, 4000],
      ['marlo-fenwick', '2025-09-03', undefined, 3000],
      ['kit-hollin', '2025-09-02', '2026-01-05', 2000],
      ['wren-abbott', '2025-09-01', '2026-01-05', 1000],
    ]);
  });
});
