import type { BowlReckoned, Portion } from '../reckon/model.ts';
import { type Exact, sign, toFixed } from '../text/exact.ts';
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

const remarkOf = ({ role, strength, how }: Portion): string => {
  const developer = role === 'developer' && strength !== undefined && sign(strength) > 0;
  const strong = developer ? [`${figure(strength, 1)} % (${figure(volOf(strength), 1)} vol)`] : [];
  return [...strong, ...(how === undefined ? [] : [how])].join('; ');
};

/** A solved bowl as text: a line a portion, then the total, the ratio and the peroxide ready for use. */
export const mixText = (bowl: BowlReckoned): string => {
  const rows = bowl.portions.map(
    (portion) => [grams(portion.shown, portion.about), portion.label, remarkOf(portion)] as const,
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
  ].join('\n');
};
