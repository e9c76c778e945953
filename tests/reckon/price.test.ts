import { describe, expect, it } from 'vitest';
import { gramPrice, packOn, piecePrice } from '../../src/reckon/bowl/price.ts';
import { plainGrams } from '../../src/reckon/bowl/weighing.ts';
import { currencyDecimals } from '../../src/reckon/currency.ts';
import { salonOf } from '../../src/reckon/salon-of.ts';
import { figure, grams, listed, perCent, quoted, ratioText } from '../../src/reckon/say.ts';
import { exactOf } from '../../src/text/exact.ts';
import { fig, journalOfNotes } from './bowls-of.ts';

const item = (lines: string) => {
  const found = journalOfNotes(`product mist goods\n${lines}`).shelf.get('mist');
  if (found === undefined) throw new Error('no product');
  return found;
};

const price = (lines: string, currency?: string, mlAsGrams = false): string =>
  fig(gramPrice(item(lines), '2026-09-04', { currency, mlAsGrams }));

describe('prices', () => {
  it('are minor units by the decimals of ISO 4217:2015', () => {
    expect([undefined, 'GBP', 'JPY', 'KWD', 'CLF', 'ISK'].map(currencyDecimals)).toEqual([2, 2, 0, 3, 4, 0]);
    expect(price('pack 100 g 12.50', 'GBP')).toBe('12.5');
    expect(price('pack 100 g 1250', 'JPY')).toBe('12.5');
    expect(price('pack 100 g 1.25', 'BHD')).toBe('12.5');
  });

  it('hold from their date on, the latest first, the last line of equal ones', () => {
    const dated = item(
      'pack 60 g 7\npack 60 g 9 from 2026-05-01\npack 60 g 8 from 2026-01-01\npack 30 g 5 from 2026-05-01',
    );
    expect(['2025-12-31', '2026-01-01', '2026-04-30', '2026-05-01'].map((date) => packOn(dated, date)?.price)).toEqual([
      7, 8, 8, 5,
    ]);
    expect(packOn(item('pack 60 g 9 from 2026-05-01'), '2026-04-30')).toBeUndefined();
  });

  it('follow the salon that asks', () => {
    const bottle = item('pack 1 l 10.00');
    const ask = (currency: string, mlAsGrams: boolean): string =>
      fig(gramPrice(bottle, '2026-09-04', { currency, mlAsGrams }));
    expect([ask('GBP', true), ask('JPY', true), ask('GBP', false), ask('GBP', true), ask('GBP', true)]).toEqual([
      '1',
      '0.01',
      '?',
      '1',
      '1',
    ]);
    const dated = item('pack 60 g 9 from 2026-05-01\npack 60 g 8 from 2026-01-01\npack 60 g 7');
    expect(packOn(dated, '2026-06-01')?.price).toBe(9);
  });

  it('of a volume need a density or the policy', () => {
    expect(price('pack 1 l 10.00')).toBe('?');
    expect(price('pack 1 l 10.00', 'GBP', true)).toBe('1');
    expect(price('pack 1 l 10.00\ndensity 1.25')).toBe('0.8');
    expect(price('note nothing')).toBe('?');
  });

  it('of pieces are by the piece', () => {
    const piece = (lines: string): string => fig(piecePrice(item(lines), '2026-09-04', 'GBP'));
    expect(piece('pack 10 each 38.00')).toBe('380');
    expect(['pack 60 g 7.00', 'pack 1 each', 'pack 0 each 4.00', 'note none'].map(piece)).toEqual(['?', '?', '?', '?']);
    expect(price('pack 10 each 38.00')).toBe('?');
  });
});

describe('the salon of a visit', () => {
  const journal = journalOfNotes(
    'salon harbour\nsalon quay\nstylist io at quay\nstylist nia at nowhere\nvisit 2026-09-04 a-a at quay\nvisit 2026-09-04 b-b by io\nvisit 2026-09-04 c-c by nia\nvisit 2026-09-04 d-d at elsewhere by io\nvisit 2026-09-04 e-e',
  );

  it('is the one it names, else its stylist’s, else the first', () => {
    const names = [...journal.clients.values()].map(({ name, visits: [visit] }) => [
      name,
      visit && salonOf(journal, visit).name,
    ]);
    expect(names).toEqual([
      ['a-a', 'quay'],
      ['b-b', 'quay'],
      ['c-c', 'harbour'],
      ['d-d', 'quay'],
      ['e-e', 'harbour'],
    ]);
  });
});

describe('wording of figures', () => {
  it('drops what says nothing', () => {
    expect([1.5, 30, 0.005, 100.1, 0].map((value) => figure(exactOf(value)))).toEqual([
      '1.5',
      '30',
      '0.01',
      '100.1',
      '0',
    ]);
    expect(figure(exactOf(1234.5), 0)).toBe('1235');
    expect([grams(exactOf(2.5)), perCent(exactOf(6)), ratioText(exactOf(1.5))]).toEqual(['2.5 g', '6 %', '1:1.5']);
  });

  it('lists names', () => {
    expect([listed([]), listed(['a']), listed(['a', 'b']), listed(['a', 'b', 'c'], 'or')]).toEqual([
      '',
      'a',
      'a and b',
      'a, b or c',
    ]);
    expect(quoted(['a', 'b'], 'or')).toBe('`a` or `b`');
  });

  it('weighs an amount of a whole bowl', () => {
    const amount = (value: number, unit: string) => ({ value, unit, at: 0 });
    expect(
      [amount(2, ''), amount(2, 'kg'), amount(2, 'ml'), amount(2, 'p')].map((one) =>
        fig(plainGrams(one, { mlAsGrams: false })),
      ),
    ).toEqual(['2', '2000', '?', '?']);
    expect(fig(plainGrams(amount(2, 'ml'), { mlAsGrams: true }))).toBe('2');
  });
});
