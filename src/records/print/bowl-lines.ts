import { componentText, partsText } from './component.ts';
import { amountText } from './figures.ts';
import { bowlText } from './names.ts';
import { type SaidFact, spaced } from './said.ts';
import { clockText } from './times.ts';

/** `A 40 clay + 20vol 1:2 = 120`, `B 90 g of 2p cream 7/0 + 6%` */
export const printBowl = ({ bowl, total, parts, claim }: SaidFact<'bowl'>): string =>
  spaced(bowlText(bowl), total && `${amountText(total)} of`, partsText(parts), claim && `= ${amountText(claim)}`);

export const printPlus = ({ bowl, parts }: SaidFact<'plus'>): string => spaced(bowlText(bowl), partsText(parts));

export const printWeighed = ({ bowl, parts }: SaidFact<'weighed'>): string =>
  spaced(bowlText(bowl), partsText(parts, ', '));

/** `A from wren-abbott 2026-07-10 A 80%` */
export const printAgain = ({ bowl, from, share }: SaidFact<'again'>): string => {
  const earlier = spaced(from.client?.name, from.date?.date, from.bowl && bowlText(from.bowl));
  return spaced(bowlText(bowl), earlier !== '' && `from ${earlier}`, share && amountText(share));
};

export const printMore = ({ bowl, amount, time }: SaidFact<'more'>): string =>
  spaced(bowlText(bowl), amount && amountText(amount), time && `at ${clockText(time)}`);

export const printLeft = ({ left, fate }: SaidFact<'left'>): string =>
  spaced(left.map(({ bowl, amount }) => `${bowlText(bowl)} ${amountText(amount)}`).join(', '), fate);

/** `M 12 + 180 mask`: what comes out of the bowl that the line names says so without `from`. */
export const printHome = ({ bowl, parts }: SaidFact<'home'>): string => {
  if (bowl === undefined) return partsText(parts);
  const texts = parts.map((part, index) => {
    const { out, ...own } = part;
    const isOut = index === 0 && out?.name === bowl.name && part.product === undefined && part.strength === undefined;
    return componentText(isOut ? own : part);
  });
  return spaced(bowlText(bowl), texts.join(' + '));
};
