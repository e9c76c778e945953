import type { MixBacktest } from '../reckon/forecast/backtest.ts';
import { compareMix, type MixComparison, type MixGuess, mixVerdict } from '../reckon/forecast/backtest-figures.ts';
import { counted } from './summary.ts';

const NAMES: Readonly<Record<MixGuess, string>> = { forecast: 'forecast', 'last time': 'same as last time' };

const grams = (value: number): string => `${Math.round(value)} g`;

const row = (first: string, cells: readonly string[]): string =>
  `  ${first.padEnd(18)}${cells.map((cell) => cell.padStart(15)).join('')}`;

const VERDICTS = {
  better: 'The gain is more than chance explains, and nothing is worse by more than that.',
  worse: 'By these notes the forecast is no better: go by the last time.',
  trade: 'Better in one and worse in the other, both more than chance explains: a choice, and no gain.',
  'not told apart': 'No more than chance explains: by these notes the forecast is no better.',
} as const;

const verdict = (comparison: MixComparison): string[] => {
  const { gain, gainError, onlyForecastShort, onlyLastShort } = comparison;
  const error = Number.isFinite(gainError) ? `${gainError.toFixed(1)} g` : 'not known';
  return [
    `The forecast wastes ${Math.abs(gain).toFixed(1)} g a bowl ${gain < 0 ? 'more' : 'less'} (standard error ${error});`,
    `${counted(onlyForecastShort, 'bowl')} would run short by it alone, ${onlyLastShort} by the last time alone.`,
    VERDICTS[mixVerdict(comparison)],
  ];
};

/** A backtest of grams to mix as lines to read: the two ways side by side, and what the figures do and do not show. */
export const mixTable = ({ basis, cases, untold, first }: MixBacktest): string => {
  const comparison = compareMix(cases);
  const from = basis === 'before' ? 'from the visits before it' : 'from all other visits';
  return [
    `Grams to mix: each bowl left out, and forecast ${from}.`,
    ...(comparison === undefined
      ? []
      : [
          '',
          `${counted(comparison.bowls, 'bowl')} on ${counted(comparison.visits, 'visit')}:`,
          row('', ['wasted', 'a bowl', 'ran short', 'lacking']),
          ...comparison.figures.map(({ guess, wasted, short, lacking }) =>
            row(NAMES[guess], [grams(wasted), grams(wasted / comparison.bowls), `${short}`, grams(lacking)]),
          ),
          ...verdict(comparison),
          '',
          `The range of the forecast, meant for eight of ten, holds ${Math.round(comparison.within * 100)} %.`,
        ]),
    '',
    `${counted(untold, 'bowl')} left out that have no \`left\` line; ${first} with no bowl like it before.`,
    'What a bowl needed is what was mixed, less what was left. A bowl is like another of the same product at the same places.',
  ].join('\n');
};
