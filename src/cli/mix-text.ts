import type { SalonSettings } from '../journal/salon.ts';
import { minorText } from '../pages/money-words.ts';
import type { BowlReckoned, Portion } from '../reckon/model.ts';
import { compare, type Exact, equal, exactOf, isZero, sign, toFixed } from '../text/exact.ts';
import { displayWidth } from '../text/width.ts';
import { volOf } from '../trade/strength.ts';

/** A number with at most `places` decimals, none at its end that are nought. */
const figure = (value: Exact, places: number): string => {
  const text = toFixed(value, places);
  return text.includes('.') ? text.replace(/\.?0+$/, '') : text;
};

/** What the total is called. */
const SUM = 'in all';

const UNKNOWN = 'not known';

const grams = (shown: Exact | undefined, about: boolean): string =>
  shown === undefined ? UNKNOWN : `${about ? 'about ' : ''}${figure(shown, 2)} g`;

const remarkOf = ({ role, strength, how }: Portion, { ratio }: BowlReckoned): string => {
  const developer = role === 'developer' && strength !== undefined && sign(strength) > 0;
  const strong = developer ? [`${figure(strength, 1)} % (${figure(volOf(strength), 1)} vol)`] : [];
  const outside = role === 'additive' && ratio !== undefined ? ['outside the ratio'] : [];
  return [...strong, ...(how === undefined ? [] : [how]), ...outside].join('; ');
};

/** Weights as typed that the scales cannot show. */
const roundedLines = ({ portions }: BowlReckoned, scale: Exact): string[] => {
  const rounded = portions.flatMap(({ typed, weight, shown, label }) =>
    typed && weight && shown && !equal(weight, shown) ? [`${figure(weight, 3)} g ${label}`] : [],
  );
  if (rounded.length === 0) return [];
  const finer = compare(scale, exactOf(0.1)) > 0 ? ' (`--scale 0.1` for finer ones)' : '';
  return ['', `Typed: ${rounded.join(', ')}. The scales show steps of ${figure(scale, 3)} g${finer}.`];
};

/**
 * A solved bowl as text: a line a portion, then the total, the ratio and the peroxide ready for use, what was rounded to
 * the scales, and the cost where the shelf has the prices.
 */
export const mixText = (bowl: BowlReckoned, { scale, currency }: Pick<SalonSettings, 'scale' | 'currency'>): string => {
  const rows = bowl.portions.map(
    (portion) => [grams(portion.shown, portion.about), portion.label, remarkOf(portion, bowl)] as const,
  );
  const total = grams(bowl.shownTotal, bowl.about);
  const wide = Math.max(...[...rows.map(([weight]) => weight), total].map(displayWidth));
  const names = Math.max(...[...rows.map(([, label]) => label), SUM].map(displayWidth));
  const row = (weight: string, label: string, said: string): string =>
    `  ${weight.padStart(wide)}  ${label}${' '.repeat(names - displayWidth(label))}  ${said}`.trimEnd();
  const sums = [
    ...(bowl.ratio === undefined ? [] : [`1:${figure(bowl.ratio, 2)}`]),
    ...(bowl.ready === undefined || sign(bowl.ready) === 0 ? [] : [`${toFixed(bowl.ready, 1)} % ready for use`]),
  ];
  return [
    `Bowl ${bowl.name}`,
    ...rows.map(([weight, label, said]) => row(weight, label, said)),
    row(total, SUM, sums.join(', ')),
    ...roundedLines(bowl, scale),
    ...(bowl.cost === undefined || isZero(bowl.cost) ? [] : ['', `Products cost ${minorText(bowl.cost, currency)}.`]),
  ].join('\n');
};
