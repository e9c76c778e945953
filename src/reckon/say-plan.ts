import { exactOf, ZERO } from '../text/exact.ts';
import type { MixForecast } from './forecast.ts';
import { hundredths, type PlannedBowl } from './plan.ts';
import { figure, listed } from './say.ts';

/** How the weight of a planned bowl came about, in words: the sum with its steps, as plain text. */

const rounded = (value: number, places = 1): string => figure(hundredths(value), places);

const all = (values: readonly number[]): string => `${listed(values.map((value) => rounded(value)))} g`;

/** `likely 84 to 118 g`: the range that eight needs of ten lie in. */
const rangeOf = ({ low, high }: MixForecast): string => `likely ${rounded(low, 0)} to ${rounded(high, 0)} g`;

/**
 * `the last 3 bowls like it needed 84, 98 and 106 g, on 27 mm of new growth, with which half of a bowl grows, 90, 103 and
 * 112 g, in the middle 103 g`.
 */
const needOf = ({ need, from, there, scaled, growth = 0, share, sized }: MixForecast): string => {
  const bowls = from.length === 1 ? 'the one bowl like it' : `the last ${from.length} bowls like it`;
  const isTold = from.some(({ told }) => told);
  return [
    `${bowls}${there ? '' : ', at other places,'} ${isTold ? 'needed' : 'took'} ${all(from.map(({ used }) => used))}`,
    ...(isTold ? [] : ['of which no note says what was left']),
    ...(scaled
      ? [
          `on ${rounded(growth, 0)} mm of new growth, with which ${rounded(share * 100)} % of a bowl grows, ${all(sized)}`,
        ]
      : []),
    ...(from.length > 1 ? [`in the middle ${rounded(need)} g`] : []),
  ].join(', ');
};

/** `: 103 × 1.08, so that few run short, = 111.2 g`; nothing where the need itself is mixed. */
const sparedOf = ({ need, mix }: MixForecast): string =>
  need === mix ? '' : `: ${rounded(need)} × ${rounded(mix / need, 2)}, so that few run short, = ${rounded(mix)} g`;

const signed = (percent: number): string => `${percent < 0 ? '−' : '+'}${figure(exactOf(Math.abs(percent)))} %`;

/** The forecast in words, with its range and its sum. */
const sayForecast = (forecast: MixForecast): string => `${needOf(forecast)}, ${rangeOf(forecast)}${sparedOf(forecast)}`;

/**
 * Why a bowl is planned as it is, with the sum: what was asked for, the forecast with its range, or what was used the last
 * time. For a bowl whose weight is known.
 */
export const sayDecided = ({ by, asked = 0, forecast, mixed = ZERO, left, need = ZERO }: PlannedBowl): string => {
  if (by === 'asked') {
    const share = figure(exactOf(100 + asked));
    return `${signed(asked)} asked for: ${figure(mixed)} × ${share} % = ${figure(need)}`;
  }
  if (forecast !== undefined) return sayForecast(forecast);
  const sum = left === undefined ? '' : `${figure(mixed)} − ${figure(left)} = `;
  return `no bowl like it tells more: ${sum}${figure(need)}`;
};

/** What the forecast comes to, where something else was asked for; undefined elsewhere. */
export const sayBeside = ({ by, forecast }: PlannedBowl): string | undefined =>
  by === 'asked' && forecast !== undefined
    ? `by the forecast ${rounded(forecast.mix, 0)} g, ${rangeOf(forecast)}`
    : undefined;
