import { expect, test } from 'vitest';
import { type StockLine, stockLedger } from '../../src/reckon/stock/ledger.ts';
import { reckonAll } from '../../src/reckon/visit.ts';
import { toFixed } from '../../src/text/exact.ts';
import { journalOf } from '../reckon/journal-of.ts';

/** Units of the source are pieces here; a price is for a pack of one. */
const SHELF = 'salon quay\n  money USD\nproduct thing goods\n  pack 1 each\n';

const lineOf = (events: readonly string[]): StockLine => {
  const notes = events.map((event) => {
    const [date, kind, units, price] = event.split(' ');
    if (kind === 'in') {
      const [, , , , useBy] = event.split(' ');
      return `stock ${date}\n  in thing ${units} each ${price}${useBy === undefined ? '' : ` use-by ${useBy}`}`;
    }
    return `visit ${date} wren\n  fit thing ${units} each`;
  });
  const journal = journalOf(`${SHELF}${notes.join('\n')}\n`);
  const [line] = stockLedger(journal, [...reckonAll(journal).values()].flat()).lines;
  if (line === undefined) throw new Error('the notes move nothing');
  return line;
};

const dollars = (cents: StockLine['value']['byBatch'], places: number): string =>
  cents === undefined ? 'none' : toFixed({ n: cents.n, d: Number(cents.d) * 100 }, places);

const OPENSTAX = [
  '2019-07-01 in 150 21.00',
  '2019-07-05 out 120',
  '2019-07-10 in 225 27.00',
  '2019-07-15 out 180',
  '2019-07-25 in 210 33.00',
];

test('OpenStax, Principles of Accounting, vol. 1 (2019), 10.3: first in, first out, perpetual: $7,200 issued of $16,155', () => {
  const { issued, value } = lineOf(OPENSTAX);
  expect(dollars(issued.byBatch, 2)).toBe('7200.00');
  expect(dollars(value.byBatch, 2)).toBe('8955.00');
});

test('OpenStax, Principles of Accounting, vol. 1 (2019), 10.3: weighted average, perpetual: $7,253 issued', () => {
  const { issued, value } = lineOf(OPENSTAX);
  expect(dollars(issued.weighted, 0)).toBe('7253');
  expect(dollars(value.weighted, 0)).toBe('8902');
});

const USE_BY: Readonly<Record<string, string>> = { '07-01': '2022-01', '07-10': '2021-01', '07-25': '2020-01' };

test('OpenStax, Principles of Accounting, vol. 1 (2019), 10.3 (figures from memory): last in, first out, perpetual, is first expired, first out where what came last expires first: $7,380 issued of $16,155', () => {
  const dated = OPENSTAX.map((event) => [event, USE_BY[event.slice(5, 10)]].filter(Boolean).join(' '));
  const { issued, value } = lineOf(dated);
  expect(dollars(issued.byBatch, 2)).toBe('7380.00');
  expect(dollars(value.byBatch, 2)).toBe('8775.00');
  // The order of issue does not touch the weighted average.
  expect(dollars(issued.weighted, 0)).toBe('7253');
});

const HERMANSON = [
  '2010-01-01 in 10 8.00',
  '2010-03-02 in 10 8.50',
  '2010-03-10 out 10',
  '2010-05-28 in 20 8.40',
  '2010-07-14 out 20',
  '2010-08-12 in 10 9.00',
  '2010-09-07 out 10',
  '2010-10-12 in 20 8.80',
  '2010-11-22 out 20',
  '2010-12-21 in 10 9.10',
];

test('Hermanson, Edwards and Maher, Accounting Principles, ch. 7 (dates from memory): moving average, $511.42 issued of $690.00', () => {
  const { issued, value } = lineOf(HERMANSON);
  expect(dollars(issued.weighted, 2)).toBe('511.42');
  expect(dollars(value.weighted, 2)).toBe('178.58');
});
