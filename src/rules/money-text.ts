import { currencyDecimals } from '../reckon/currency.ts';
import { exact, exactOf, toFixed } from '../text/exact.ts';

/** Minor units as an amount of the currency: `82.00 GBP`. */
export const moneyText = (minor: number, currency: string | undefined): string => {
  const decimals = currencyDecimals(currency);
  const figure = toFixed(exact(minor, 10 ** decimals), decimals);
  return currency === undefined ? figure : `${figure} ${currency}`;
};

/** An amount as typed, with the decimals of the currency: `6.80`. */
export const priceText = (amount: number, currency: string | undefined): string =>
  toFixed(exactOf(amount), currencyDecimals(currency));
