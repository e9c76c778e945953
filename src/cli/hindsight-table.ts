import type { Hindsight } from '../reckon/lift/hindsight.ts';
import {
  type Comparison,
  compareGuesses,
  type Guess,
  verdictOf,
  withinSpan,
} from '../reckon/lift/hindsight-figures.ts';
import { JUDGE_BY_HAIR } from '../reckon/lift/say-pace.ts';
import { capital } from '../text/fold.ts';
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
    .map((cell) => cell.padStart(20))
    .join('')}`;

const VERDICTS = {
  nearer: ({ guess }: Against): string =>
    `reckon with the estimate, nearer than \`${NAMES[guess]}\` by more than chance explains`,
  further: ({ guess }: Against): string =>
    `go by \`${NAMES[guess]}\`, nearer than the estimate by more than chance explains`,
  'no difference shown': ({ guess }: Against): string =>
    `no difference shown, the estimate and \`${NAMES[guess]}\` differ no more than chance explains`,
  'too many taken off': ({ guess }: Against): string =>
    `too many were taken off before the stage to say which is nearer, the estimate or \`${NAMES[guess]}\``,
} as const;

type Against = NonNullable<Comparison['against']>;

/** What a comparison comes to, claiming no more than the figures bear; nothing without one. */
const verdict = (when: string, comparison: Comparison | undefined): string[] =>
  comparison?.against === undefined ? [] : [`${when} ${VERDICTS[verdictOf(comparison)](comparison.against)}`];

/** How much nearer the estimate is, as the figures of the table have it. */
const difference = (comparison: Comparison): string[] => {
  const { against, errors } = comparison;
  if (against === undefined) return [];
  const meanOf = (guess: Guess): number =>
    Math.round((errors.find((one) => one.guess === guess)?.mean ?? Number.NaN) * 10) / 10;
  const gain = meanOf(against.guess) - meanOf('estimate');
  const error = Number.isFinite(against.error) ? minutes(against.error) : 'not known';
  return [
    `The estimate is ${minutes(Math.abs(gain))} ${gain < 0 ? 'further out' : 'nearer'} than \`${NAMES[against.guess]}\` (standard error ${error})${verdictOf(comparison) === 'no difference shown' ? ': no difference shown' : ''}.`,
  ];
};

const section = (title: (found: string) => string, comparison: Comparison | undefined): string[] => {
  if (comparison === undefined) return [];
  const { before } = comparison;
  const off = before === 0 ? '' : `, ${before} taken off before the stage`;
  const found = `${counted(comparison.cases, 'place')} on ${counted(comparison.visits, 'visit')}${off}`;
  return [
    '',
    title(found),
    row(['', 'mean error', 'on the whole', 'within 5 min']),
    ...comparison.errors.map(({ guess, mean, bias, within, atLeast }) =>
      row([NAMES[guess], `${atLeast ? 'at least ' : ''}${minutes(mean)}`, leaning(bias), share(within)]),
    ),
    ...(comparison.errors.some(({ atLeast }) => atLeast)
      ? ['At least: the longest were all taken off before, so nothing says how long they take.']
      : []),
    ...difference(comparison),
  ];
};

/** A hindsight of lift as lines to read: the guesses side by side, and what the figures do and do not show. */
export const hindsightTable = ({ basis, cases, untold }: Hindsight): string => {
  const from = basis === 'before' ? 'from the visits before it' : 'from all other visits';
  const first = cases.filter(({ lastTime }) => lastTime === undefined);
  const held = withinSpan(cases);
  const early = cases.filter(({ reached }) => !reached).length;
  const without = cases.filter(({ estimate }) => estimate === undefined).length;
  const again = compareGuesses(cases, ['estimate', 'last time', 'middle of the line']);
  const anew = compareGuesses(first, ['estimate', 'middle of the line']);
  const verdicts = [...verdict('where there is a last time,', again), ...verdict('where there is none,', anew)];
  return [
    ...(verdicts.length === 0 ? [] : [capital(`${verdicts.join('; ')}.`), '']),
    `Minutes from first on to the stage asked about: each visit left out, and estimated ${from}.`,
    ...section((found) => `${found}, where there is a last time:`, again),
    ...section((found) => `${found}, where there is none:`, anew),
    '',
    ...(held === undefined
      ? []
      : [`The span of the estimate, meant for eight of ten, holds ${share(held)} of ${cases.length - without}.`]),
    `${counted(cases.length, 'place')} looked at, ${early} of them taken off before the stage; ${without} with nothing to estimate from; ${untold} left out, whose stage was there at the first look, or that showed none.`,
    'The stage asked about is as far as a quarter of her visits before came, or of the salon’s where that is further. What was taken off before counts as longer than its last look, as the others of the notes went on from there.',
    `A visit counts one, shared between its places. ${JUDGE_BY_HAIR}`,
  ].join('\n');
};
