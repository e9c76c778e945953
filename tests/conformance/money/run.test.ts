import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { findFiles } from '../../../src/journal/find.ts';
import { joinSources } from '../../../src/journal/journal.ts';
import { readSource } from '../../../src/journal/source.ts';
import { chargedItems } from '../../../src/reckon/money/charges.ts';
import { depositsHeld } from '../../../src/reckon/money/deposits.ts';
import { marginOf, takings, takingsBy } from '../../../src/reckon/money/takings.ts';
import { usageBy, usageInAll } from '../../../src/reckon/use/usage-by.ts';
import { reckonAll } from '../../../src/reckon/visit.ts';
import { div, type Exact, exact, mul, toFixed } from '../../../src/text/exact.ts';
import { tablesOf, type WorkedRow } from '../clock-and-lift/read-worked.ts';

const DEMO = join(import.meta.dirname, '../../../journals/harbour-row');
const PERIOD = { from: '2025-05-01', to: '2025-05-31' };

const journal = joinSources(findFiles(DEMO).map((path) => readSource(path, readFileSync(path))));
const all = [...reckonAll(journal).values()].flat();
const visits = all
  .filter(({ date }) => date >= PERIOD.from && date <= PERIOD.to)
  .sort((a, b) => (`${a.date} ${a.client.name}` < `${b.date} ${b.client.name}` ? -1 : 1));

const page = readFileSync(join(import.meta.dirname, '2025-05.md'), 'utf8');
const [, bowls = [], worked = [], items = [], products = [], stylists = [], inAll = []] = tablesOf(page);

/** The cells of these columns, a row each. */
const cells = (rows: readonly WorkedRow[], ...columns: string[]): (string | undefined)[][] =>
  rows.map((row) => columns.map((column) => row[column]));

const pounds = (pence: number): string => toFixed(exact(pence, 100), 2);
const poundsOf = (pence: Exact | undefined): string => (pence === undefined ? '?' : toFixed(div(pence, exact(100)), 4));
const grams = (value: Exact): string => toFixed(value, 3).replace(/\.?0+$/, '');

describe('May 2025 of the demo, worked by hand', () => {
  test('every bowl agrees to the gram: what went in, what was left of it, what it cost', () => {
    const found = visits.flatMap(({ date, client, bowls: mixed }) =>
      mixed.flatMap(({ name, portions, left, mixed: whole }) =>
        portions.map(({ label, weight, cost }) => [
          date,
          client.name,
          name,
          label,
          weight && grams(weight),
          weight && whole && toFixed(left ? div(mul(weight, left.weight), whole) : exact(0), 3),
          cost && toFixed(cost, 3),
        ]),
      ),
    );
    expect(found).toEqual(cells(bowls, 'day', 'client', 'bowl', 'what', 'grams', 'left', 'pence'));
    expect(found).toHaveLength(71);
  });

  test('every visit agrees to the penny', () => {
    expect(
      takingsBy(all, PERIOD, 'visit').flatMap((row) =>
        Array.from({ length: row.visits }, () => [
          ...row.name.split(' '),
          pounds(row.charged),
          pounds(row.cost),
          pounds(marginOf(row)),
        ]),
      ),
    ).toEqual(cells(worked, 'day', 'client', 'charged', 'products', 'margin'));
  });

  test('every item charged for bears its part of the products to the penny', () => {
    const found = visits.flatMap((visit) =>
      chargedItems(visit).map(({ item, charged, cost }) => [
        visit.date,
        visit.client.name,
        item === '' ? '–' : item,
        pounds(charged),
        pounds(cost),
      ]),
    );
    expect(found).toEqual(cells(items, 'day', 'client', 'item', 'price', 'products'));
  });

  test('the products agree to the gram and to a hundredth of a penny', () => {
    expect(
      usageBy(all, PERIOD, journal.shelf, 'product').map(({ name, mixed, left, cost }) => [
        name,
        grams(mixed),
        toFixed(left, 3),
        poundsOf(cost),
      ]),
    ).toEqual(cells(products, 'product', 'grams', 'left', 'cost'));
  });

  test('the stylists agree, a split visit shared to the penny', () => {
    expect(
      takingsBy(all, PERIOD, 'stylist').map((row) => [
        row.name,
        `${row.visits}`,
        pounds(row.charged),
        pounds(row.cost),
        pounds(marginOf(row)),
      ]),
    ).toEqual(cells(stylists, 'stylist', 'visits', 'charged', 'products', 'margin'));
  });

  test('all of it agrees', () => {
    const used = usageInAll(all, PERIOD, journal.shelf);
    const [money, more] = takings(all, PERIOD);
    if (used === undefined || money === undefined) throw new Error('May 2025 is not in the demo');
    expect(more).toBeUndefined();
    expect([
      [
        grams(used.mixed),
        toFixed(used.left, 3),
        poundsOf(used.cost),
        poundsOf(used.costOfLeft),
        pounds(money.charged),
        pounds(money.cost),
        pounds(marginOf(money)),
      ],
    ]).toEqual(cells(inAll, 'grams', 'left', 'cost', 'cost of left', 'charged', 'products', 'margin'));
  });

  test('the deposit is held from the day it is taken to the day before it is used', () => {
    const heldOn = (day: string): (string | number)[][] =>
      depositsHeld(all, day).map(({ client, amount }) => [client.name, amount]);
    expect(heldOn('2025-05-19')).toEqual([]);
    expect(heldOn('2025-05-20')).toEqual([['rowan-rudge', 6000]]);
    expect(heldOn('2025-05-23')).toEqual([['rowan-rudge', 6000]]);
    expect(heldOn('2025-05-31')).toEqual([]);
  });
});
