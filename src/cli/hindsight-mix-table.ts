import { minorText } from '../pages/money-words.ts';
import type { MixBacktest } from '../reckon/forecast/hindsight.ts';
import { compareMix, type MixComparison, type MixGuess, mixVerdict } from '../reckon/forecast/hindsight-figures.ts';
import { counted } from './summary.ts';

const NAMES: Readonly<Record<MixGuess, string>> = { forecast: 'forecast', 'last time': 'same as last time' };

const grams = (value: number): string => `${Math.round(value)} g`;

const row = (first: string, cells: readonly string[]): string =>
  `  ${first.padEnd(18)}${cells.map((cell) => cell.padStart(15)).join('')}`;

const WASTE: Readonly<Record<number, string>> = {
  1: 'the forecast wastes less, by more than chance explains',
  0: 'no difference shown, no more than chance explains',
  [-1]: 'the same as last time wastes less, by more than chance explains',
};

const SHORT: Readonly<Record<number, string>> = {
  1: 'fewer by the forecast, by more than chance explains',
  0: 'no difference shown, no more than chance explains',
  [-1]: 'fewer by the same as last time, by more than chance explains',
};

/** Waste and shortfalls each by themselves: neither is traded for the other. */
const verdictLines = (comparison: MixComparison): string[] => {
  const { waste, short } = mixVerdict(comparison);
  const [forecast, last] = comparison.figures.map((one) => one.short);
  return [
    `Left over: ${WASTE[waste]}.`,
    `Ran short: ${SHORT[short]}; ${forecast} of ${counted(comparison.bowls, 'bowl')} by the forecast, ${last} by the same as last time.`,
  ];
};

const tenth = (value: number): number => Math.round(value * 10) / 10;

/** How the two differ, from the figures of the table, and by visits, which the verdict goes by. */
const difference = ({ bowls, figures, gain, gainError, onlyForecastShort, onlyLastShort }: MixComparison): string[] => {
  const [forecast, last] = figures.map(({ wasted }) => tenth(wasted / bowls));
  const less = (last ?? 0) - (forecast ?? 0);
  const error = Number.isFinite(gainError) ? `${gainError.toFixed(1)} g` : 'not known';
  return [
    `The forecast wastes ${Math.abs(less).toFixed(1)} g a bowl ${less < 0 ? 'more' : 'less'}; by visits, each counting one, ${Math.abs(gain).toFixed(1)} g ${gain < 0 ? 'more' : 'less'} (standard error ${error}).`,
    `Of the bowls run short, ${onlyForecastShort} are so by it alone and ${onlyLastShort} by the last time alone.`,
  ];
};

/** A hindsight of grams to mix as lines to read: the two ways side by side, and what the figures do and do not show. */
export const mixTable = ({ basis, cases, untold, first }: MixBacktest): string => {
  const comparison = compareMix(cases);
  const hasCost = comparison?.currency !== undefined;
  const from = basis === 'before' ? 'from the visits before it' : 'from all other visits';
  return [
    ...(comparison === undefined ? [] : [...verdictLines(comparison), '']),
    `Grams to mix: each bowl left out, and forecast ${from}.`,
    ...(comparison === undefined
      ? []
      : [
          '',
          `${counted(comparison.bowls, 'bowl')} on ${counted(comparison.visits, 'visit')}:`,
          row('', ['wasted', 'a bowl', ...(hasCost ? ['worth'] : []), 'ran short', 'lacking']),
          ...comparison.figures.map(({ guess, wasted, cost, short, lacking }) =>
            row(NAMES[guess], [
              grams(wasted),
              `${tenth(wasted / comparison.bowls).toFixed(1)} g`,
              ...(hasCost ? [minorText(Math.round(cost), comparison.currency)] : []),
              `${short}`,
              grams(lacking),
            ]),
          ),
          ...difference(comparison),
          ...(hasCost && comparison.unpriced > 0
            ? [`What ${counted(comparison.unpriced, 'bowl')} without a price wasted is not in what it was worth.`]
            : []),
          '',
          `The range of the forecast, meant for eight of ten, holds ${Math.round(comparison.within * 100)} %.`,
        ]),
    '',
    `${counted(untold, 'bowl')} left out that have no \`left\` line; ${first} with no bowl like it before.`,
    'What a bowl needed is what was mixed, less what was left. A bowl is like another of the same product at the same places.',
  ].join('\n');
};
