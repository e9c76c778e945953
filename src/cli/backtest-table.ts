import type { Backtest } from '../reckon/lift/backtest.ts';
import { type Comparison, compareGuesses, type Guess, verdictOf, withinSpan } from '../reckon/lift/backtest-figures.ts';
import { JUDGE_BY_HAIR } from '../reckon/lift/say-pace.ts';
import { counted } from './summary.ts';

const NAMES: Readonly<Record<Guess, string>> = {
  estimate: 'estimate',
  'last time': 'same as last time',
  'middle of the line': "middle of the product's time line",
};

const WIDE = Math.max(...Object.values(NAMES).map((name) => name.length));

const minutes = (value: number): string => `${value.toFixed(1)} min`;

const share = (value: number): string => `${Math.round(value * 100)} %`;

const leaning = (bias: number): string => {
  const size = Math.abs(bias).toFixed(1);
  return size === '0.0' ? 'neither' : `${size} min ${bias > 0 ? 'long' : 'short'}`;
};

const row = (cells: readonly [string, string, string, string]): string =>
  `  ${cells[0].padEnd(WIDE)}${cells
    .slice(1)
    .map((cell) => cell.padStart(16))
    .join('')}`;

const BEYOND_CHANCE = 'more than chance explains';

const VERDICTS = {
  nearer: `${BEYOND_CHANCE}.`,
  further: `${BEYOND_CHANCE}. Go by that guess here.`,
  'not told apart': 'no more than chance explains.',
} as const;

/** What the comparison comes to, claiming no more than the figures bear. */
const verdict = (comparison: Comparison): string[] => {
  const { against } = comparison;
  if (against === undefined) return [];
  const way = against.gain < 0 ? 'further out' : 'nearer';
  const error = Number.isFinite(against.error) ? minutes(against.error) : 'not known';
  return [
    `The estimate is ${minutes(Math.abs(against.gain))} ${way} than \`${NAMES[against.guess]}\` (standard error ${error}):`,
    VERDICTS[verdictOf(comparison)],
  ];
};

const section = (title: (found: string) => string, comparison: Comparison | undefined): string[] => {
  if (comparison === undefined) return [];
  const found = `${counted(comparison.cases, 'place')} on ${counted(comparison.visits, 'visit')}`;
  return [
    '',
    title(found),
    row(['', 'mean error', 'on the whole', 'within 5 min']),
    ...comparison.errors.map(({ guess, mean, bias, within }) =>
      row([NAMES[guess], minutes(mean), leaning(bias), share(within)]),
    ),
    ...verdict(comparison),
  ];
};

/** A backtest of lift as lines to read: the guesses side by side, and what the figures do and do not show. */
export const backtestTable = ({ basis, cases, untold }: Backtest): string => {
  const from = basis === 'before' ? 'from the visits before it' : 'from all other visits';
  const first = cases.filter(({ lastTime }) => lastTime === undefined);
  const held = withinSpan(cases);
  const without = cases.filter(({ estimate }) => estimate === undefined).length;
  return [
    `Minutes from first on to the stage reached: each visit left out, and estimated ${from}.`,
    ...section(
      (found) => `${found}, where there is a last time:`,
      compareGuesses(cases, ['estimate', 'last time', 'middle of the line']),
    ),
    ...section((found) => `${found}, where there is none:`, compareGuesses(first, ['estimate', 'middle of the line'])),
    '',
    ...(held === undefined
      ? []
      : [`The span of the estimate, meant for eight of ten, holds ${share(held)} of ${cases.length - without}.`]),
    `${counted(cases.length, 'place')} looked at; ${without} with nothing to estimate from; ${untold} left out, whose stage was there at the first look.`,
    `A visit counts one, shared between its places. ${JUDGE_BY_HAIR}`,
  ].join('\n');
};
