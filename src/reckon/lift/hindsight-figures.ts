import { grouped, mean } from './grouped.ts';
import type { LiftCase } from './hindsight.ts';

const SAYS = {
  estimate: ({ estimate }: LiftCase): number | undefined => estimate?.minutes,
  'last time': ({ lastTime }: LiftCase): number | undefined => lastTime,
  'middle of the line': ({ lineMiddle }: LiftCase): number | undefined => lineMiddle,
} as const;

export type Guess = keyof typeof SAYS;

/** How far out one guess is, in minutes. A visit counts one, shared between its places. */
export type GuessError = {
  readonly guess: Guess;
  /** Mean of the errors without their sign. */
  readonly mean: number;
  /** Mean of the errors with their sign: above nought the guess is too long. */
  readonly bias: number;
  /** Share that is at most five minutes out. */
  readonly within: number;
};

/** Guesses side by side on the cases that all of them can make. */
export type Comparison = {
  readonly cases: number;
  readonly visits: number;
  readonly errors: readonly GuessError[];
  /** The nearest other guess, how much further out it is than the estimate, and the standard error of that. */
  readonly against: { readonly guess: Guess; readonly gain: number; readonly error: number } | undefined;
};

const NEAR = 5;

/** Means by visit of a value of each case. */
const byVisit = (cases: readonly LiftCase[], sayOf: (one: LiftCase) => number): number[] =>
  [...grouped(cases, ({ client, date, product }) => `${client} ${date} ${product}`).values()].map((own) =>
    mean(own.map(sayOf)),
  );

const standardError = (values: readonly number[]): number => {
  const middle = mean(values);
  return Math.sqrt(values.reduce((sum, value) => sum + (value - middle) ** 2, 0) / (values.length - 1) / values.length);
};

/** How far out the guesses are on the cases that each of them can make; undefined when there is no such case. */
export const compareGuesses = (all: readonly LiftCase[], guesses: readonly Guess[]): Comparison | undefined => {
  const cases = all.filter((one) => guesses.every((guess) => SAYS[guess](one) !== undefined));
  if (cases.length === 0) return undefined;
  const off = (guess: Guess, one: LiftCase): number => Number(SAYS[guess](one)) - one.minutes;
  const errors = guesses.map(
    (guess): GuessError => ({
      guess,
      mean: mean(byVisit(cases, (one) => Math.abs(off(guess, one)))),
      bias: mean(byVisit(cases, (one) => off(guess, one))),
      within: mean(byVisit(cases, (one) => (Math.abs(off(guess, one)) <= NEAR ? 1 : 0))),
    }),
  );
  const [nearest] = errors.filter(({ guess }) => guess !== 'estimate').toSorted((a, b) => a.mean - b.mean);
  const gains =
    nearest === undefined
      ? []
      : byVisit(cases, (one) => Math.abs(off(nearest.guess, one)) - Math.abs(off('estimate', one)));
  return {
    cases: cases.length,
    visits: byVisit(cases, () => 0).length,
    errors,
    against: nearest && { guess: nearest.guess, gain: mean(gains), error: standardError(gains) },
  };
};

/** Share of the cases with an estimate whose minutes lie within its span; undefined without such a case. */
export const withinSpan = (all: readonly LiftCase[]): number | undefined => {
  const told = all.flatMap(({ minutes, estimate }) =>
    estimate === undefined ? [] : [minutes >= estimate.low && minutes <= estimate.high ? 1 : 0],
  );
  return told.length === 0 ? undefined : mean(told);
};

/** What a comparison shows: the gain must be twice its standard error before it is told from chance. */
export const verdictOf = ({ against }: Comparison): 'nearer' | 'further' | 'not told apart' => {
  if (against === undefined || !(Math.abs(against.gain) > 2 * against.error)) return 'not told apart';
  return against.gain > 0 ? 'nearer' : 'further';
};
