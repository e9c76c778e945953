import { expectedOf, type Survival, survivalOf, type Waited } from './censored.ts';
import { grouped, mean } from './grouped.ts';
import type { LiftCase } from './hindsight.ts';

const SAYS = {
  estimate: ({ estimate }: LiftCase): number | undefined => estimate?.minutes,
  'last time': ({ lastTime }: LiftCase): number | undefined => lastTime,
  'middle of the line': ({ lineMiddle }: LiftCase): number | undefined => lineMiddle,
} as const;

export type Guess = keyof typeof SAYS;

/**
 * How far out one guess is, in minutes. A visit counts one, shared between its places. What was taken off before the stage
 * counts as longer than that, by the distribution of all (`censored.ts`).
 */
export type GuessError = {
  readonly guess: Guess;
  /** Mean of the errors without their sign. */
  readonly mean: number;
  /** Mean of the errors with their sign: above nought the guess is too long. */
  readonly bias: number;
  /** Share that is at most five minutes out. */
  readonly within: number;
  /** The errors are a lower end: so many of the longest were taken off before that nothing says how long they take. */
  readonly atLeast: boolean;
};

/** Guesses side by side on the cases that all of them can make. */
export type Comparison = {
  readonly cases: number;
  /** Of them, those taken off before the stage. */
  readonly before: number;
  readonly visits: number;
  readonly errors: readonly GuessError[];
  /** The nearest other guess, how much further out it is than the estimate, and the standard error of that. */
  readonly against: { readonly guess: Guess; readonly gain: number; readonly error: number } | undefined;
};

const NEAR = 5;

/** A share of all below which a lower end hardly moves the mean. A choice, no source. */
const LITTLE_TAIL = 0.02;

/** Shorter than any look: keeps logarithms of nought away. */
const LEAST = 0.1;

const visitKey = ({ client, date, product }: LiftCase): string => `${client} ${date} ${product}`;

/** Means by visit of a value of each case. */
const byVisit = (cases: readonly LiftCase[], sayOf: (one: LiftCase) => number): number[] =>
  [...grouped(cases, visitKey).values()].map((own) => mean(own.map(sayOf)));

/** How many times a guess the truth of each case is, as a logarithm, and the distribution of that: as the paces have it. */
type Beyond = { readonly survival: Survival; readonly of: (one: LiftCase) => Waited };

/** The error, truth less guess, of so many times a guess. */
const missOf = (guess: number, log: number): number => guess * (Math.exp(log) - 1);

const beyondGuess = (cases: readonly LiftCase[], minutesOf: (one: LiftCase) => number): Beyond => {
  const places = grouped(cases, visitKey);
  const of = (one: LiftCase): Waited => ({
    value: Math.log(Math.max(one.minutes, LEAST) / Math.max(minutesOf(one), LEAST)),
    ended: one.reached,
    weight: 1 / (places.get(visitKey(one))?.length ?? 1),
  });
  return { survival: survivalOf(cases.map(of)), of };
};

const standardError = (values: readonly number[]): number => {
  const middle = mean(values);
  return Math.sqrt(values.reduce((sum, value) => sum + (value - middle) ** 2, 0) / (values.length - 1) / values.length);
};

/** How far out the guesses are on the cases that each of them can make; undefined when there is no such case. */
export const compareGuesses = (all: readonly LiftCase[], guesses: readonly Guess[]): Comparison | undefined => {
  const cases = all.filter((one) => guesses.every((guess) => SAYS[guess](one) !== undefined));
  if (cases.length === 0) return undefined;
  const beyond = new Map(guesses.map((guess) => [guess, beyondGuess(cases, (one) => Number(SAYS[guess](one)))]));
  const expected = (guess: Guess, one: LiftCase, measure: (minutes: number) => number): number => {
    const found = beyond.get(guess);
    const minutes = Number(SAYS[guess](one));
    if (found === undefined) return Number.NaN;
    if (one.reached) return measure(one.minutes - minutes);
    return expectedOf(found.survival, found.of(one), (log) => measure(missOf(minutes, log)));
  };
  const errors = guesses.map(
    (guess): GuessError => ({
      guess,
      mean: mean(byVisit(cases, (one) => expected(guess, one, Math.abs))),
      bias: -mean(byVisit(cases, (one) => expected(guess, one, (minutes) => minutes))),
      within: mean(byVisit(cases, (one) => expected(guess, one, (minutes) => (Math.abs(minutes) <= NEAR ? 1 : 0)))),
      atLeast: (beyond.get(guess)?.survival.tail ?? 0) > LITTLE_TAIL,
    }),
  );
  const [nearest] = errors.filter(({ guess }) => guess !== 'estimate').toSorted((a, b) => a.mean - b.mean);
  const gains =
    nearest === undefined
      ? []
      : byVisit(cases, (one) => expected(nearest.guess, one, Math.abs) - expected('estimate', one, Math.abs));
  return {
    cases: cases.length,
    before: cases.filter(({ reached }) => !reached).length,
    visits: byVisit(cases, () => 0).length,
    errors,
    against: nearest && { guess: nearest.guess, gain: mean(gains), error: standardError(gains) },
  };
};

const isBetween = (value: number, low: number, high: number): number => (value >= low && value <= high ? 1 : 0);

/** Share of the cases with an estimate whose minutes lie within its span; undefined without such a case. */
export const withinSpan = (all: readonly LiftCase[]): number | undefined => {
  const told = all.flatMap((one) => (one.estimate === undefined ? [] : [{ one, estimate: one.estimate }]));
  if (told.length === 0) return undefined;
  const minutesOf = ({ estimate }: LiftCase): number => estimate?.minutes ?? Number.NaN;
  const { survival, of } = beyondGuess(
    told.map(({ one }) => one),
    minutesOf,
  );
  return mean(
    told.map(({ one, estimate: { minutes, low, high } }) =>
      one.reached
        ? isBetween(one.minutes, low, high)
        : expectedOf(survival, of(one), (log) => isBetween(minutes * Math.exp(log), low, high)),
    ),
  );
};

/**
 * What a comparison shows: the gain must be twice its standard error before it is told from chance, and where the errors
 * are a lower end nothing is.
 */
export const verdictOf = ({
  against,
  errors,
}: Comparison): 'nearer' | 'further' | 'no difference shown' | 'too many taken off' => {
  if (errors.some(({ atLeast }) => atLeast)) return 'too many taken off';
  if (against === undefined || !(Math.abs(against.gain) > 2 * against.error)) return 'no difference shown';
  return against.gain > 0 ? 'nearer' : 'further';
};
