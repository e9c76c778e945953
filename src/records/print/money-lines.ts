import { UNIT_WORDS } from '../../notation/words.ts';
import { moneyText, numberText, wordsText } from './figures.ts';
import { type SaidFact, spaced } from './said.ts';

/** `foils 95`, `discount 20%`, `total 140` */
export const printCharge = ({ item, amount, discount }: SaidFact<'charge'>): string =>
  spaced(item, amount !== undefined && moneyText(amount), discount !== undefined && `${numberText(discount)}%`);

/** `100 for 2026-12-12`, `used 50` */
export const printDeposit = ({ amount, for: day, used, returned }: SaidFact<'deposit'>): string =>
  spaced(used && 'used', returned && 'returned', amount !== undefined && moneyText(amount), day && `for ${day.date}`);

/** `210 card` */
export const printPaid = ({ amount, how }: SaidFact<'paid'>): string => {
  const sum = amount !== undefined && moneyText(amount);
  const means = wordsText(how);
  return UNIT_WORDS.has(how[0]?.word ?? '') ? spaced(means, sum) : spaced(sum, means);
};

export const printSplit = ({ shares }: SaidFact<'split'>): string =>
  shares.map(({ by, percent }) => `${by.name} ${numberText(percent)}%`).join(', ');
