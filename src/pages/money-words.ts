import { currencyDecimals } from '../reckon/currency.ts';
import type { Charge, Deposit, Paid, Split } from '../records/schema/visit.ts';
import { div, type Exact, exact, exactOf, toFixed } from '../text/exact.ts';
import { escapeText } from './escape.ts';
import { commas, joined, type Noted, spaced, stylistName, typedWords } from './noted.ts';
import { plain } from './say-numbers.ts';

/** Minor units as a figure in the currency's own decimals: `95.00`. */
export const minorFigure = (minor: Exact | number, currency: string | undefined): string => {
  const places = currencyDecimals(currency);
  const value = typeof minor === 'number' ? exactOf(minor) : minor;
  return toFixed(div(value, exact(10 ** places)), places);
};

/** Minor units as an amount of the currency: `95.00 GBP`; bare while no currency is named. */
export const minorText = (minor: Exact | number, currency: string | undefined): string =>
  spaced([minorFigure(minor, currency), currency && escapeText(currency)]);

const sumText = ({ salon }: Noted, value: number | undefined): string | undefined =>
  value === undefined
    ? undefined
    : spaced([toFixed(exactOf(value), currencyDecimals(salon.currency)), salon.currency && escapeText(salon.currency)]);

export const chargeText = (noted: Noted, { item, amount, discount }: Charge): string =>
  spaced([escapeText(item), sumText(noted, amount), discount !== undefined && `${plain(discount)} % off`]);

export const depositText = (noted: Noted, fact: Deposit): string =>
  commas([
    spaced([fact.used && 'used', fact.returned && 'returned', sumText(noted, fact.amount)]),
    fact.for && `for ${fact.for.date}`,
  ]);

export const paidText = (noted: Noted, fact: Paid): string =>
  spaced([sumText(noted, fact.amount), typedWords(noted, fact, fact.how)]);

export const splitText = ({ journal }: Noted, { shares }: Split): string =>
  joined(
    shares.map(({ by, percent }) => `${stylistName(journal, by)} ${plain(percent)} %`),
    ', ',
  );
