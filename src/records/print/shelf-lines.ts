import {
  amountText,
  durationText,
  moneyText,
  numberText,
  ratioText,
  shadeText,
  strengthText,
  whenText,
  wordText,
} from './figures.ts';
import { namesText } from './names.ts';
import { type SaidFact, spaced } from './said.ts';

export const printMix = ({ ratio }: SaidFact<'mix'>): string => (ratio === undefined ? 'none' : ratioText(ratio));

export const printUses = ({ products }: SaidFact<'uses'>): string => namesText(products);

export const printStrength = ({ strengths, upTo }: SaidFact<'strength'>): string =>
  upTo === undefined ? strengths.map(strengthText).join(' ') : `to ${strengthText(upTo)}`;

const conditionText = (when: SaidFact<'time'>['when']): string | undefined => {
  if (when === undefined) return undefined;
  if (when.if === 'grey') return `if grey ${numberText(when.percent)}%`;
  return when.if === 'with' ? `if with ${when.product.name}` : `if ${when.if}`;
};

/** `20-50 min from first-on, check every 10 min` */
export const printTime = ({ minutes, from, checkEvery, when }: SaidFact<'time'>): string => {
  const begin = spaced(durationText(minutes, ' '), from && `from ${from}`, conditionText(when));
  return checkEvery === undefined ? begin : `${begin}, check every ${durationText(checkEvery, ' ')}`;
};

const rangeText = (low: number, high: number): string =>
  low === high ? numberText(low) : `${numberText(low)}-${numberText(high)}`;

export const printLift = ({ claims }: SaidFact<'lift'>): string =>
  claims.map(({ strength, low, high }) => `${strengthText(strength)} ${rangeText(low, high)}`).join(', ');

export const printTones = ({ tones }: SaidFact<'tones'>): string =>
  tones.map(({ digit, tone }) => `${digit} ${wordText(tone)}`).join(', ');

export const printShades = ({ shades }: SaidFact<'shades'>): string => shades.map(({ name }) => name).join(', ');

export const printPack = ({ amount, price, from }: SaidFact<'pack'>): string =>
  spaced(amountText(amount), price !== undefined && moneyText(price), from && `from ${from.date}`);

export const printReorder = ({ at }: SaidFact<'reorder'>): string => `at ${amountText(at)}`;

export const printDensity = ({ density }: SaidFact<'density'>): string => numberText(density);

export const printKeeps = ({ keeps }: SaidFact<'keeps'>): string => durationText(keeps);

export const printMeasure = ({ measure, amount }: SaidFact<'measure'>): string =>
  spaced(measure.name, amountText(amount));

export const printScalp = ({ upTo }: SaidFact<'scalp'>): string =>
  upTo === undefined ? 'never' : `to ${strengthText(upTo)}`;

export const printDose = ({ low, high, per }: SaidFact<'dose'>): string =>
  `${rangeText(low, high)} per ${numberText(per)}`;

export const printOver = ({ depth, darker }: SaidFact<'over'>): string =>
  darker === undefined ? numberText(depth ?? 0) : `${numberText(darker)} darker`;

/** `cream 7/43 4 packs 27.20 lot K2231 use-by 2028-01` */
export const printIn = ({ product, shade, amount, price, lot, useBy }: SaidFact<'in'>): string =>
  spaced(
    product.name,
    shade && shadeText(shade),
    amount && amountText(amount),
    price !== undefined && moneyText(price),
    lot && `lot ${lot.text}`,
    useBy && `use-by ${whenText(useBy)}`,
  );

/** `dev-6 640 g`, `dev-9 200 g lot K2231` */
export const printCounted = ({ product, shade, amount, lot }: Omit<SaidFact<'count' | 'out'>, 'word'>): string =>
  spaced(product.name, shade && shadeText(shade), amount && amountText(amount), lot && `lot ${lot.text}`);
