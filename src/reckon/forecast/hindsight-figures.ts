import { grouped, mean } from '../lift/grouped.ts';
import type { MixCase } from './hindsight.ts';

export type MixGuess = 'forecast' | 'last time';

const MIXED: Readonly<Record<MixGuess, (one: MixCase) => number>> = {
  forecast: ({ forecast }) => forecast.mix,
  'last time': ({ lastTime }) => lastTime,
};

/** What one way of mixing comes to. */
export type MixFigures = {
  readonly guess: MixGuess;
  /** Grams that would have been left over. */
  readonly wasted: number;
  /** What those grams cost, in minor units; bowls without a price are left out. */
  readonly cost: number;
  /** Bowls that would have run short, and the grams they lacked. */
  readonly short: number;
  readonly lacking: number;
};

/** The forecast beside the same as last time. */
export type MixComparison = {
  readonly bowls: number;
  readonly visits: number;
  /** The currency of the costs; undefined where the bowls have none, or several. */
  readonly currency: string | undefined;
  /** Bowls without a price. */
  readonly unpriced: number;
  readonly figures: readonly MixFigures[];
  /** Grams a bowl that the forecast wastes less, a visit counting one, and the standard error of that. */
  readonly gain: number;
  readonly gainError: number;
  /** Bowls that only the forecast lets run short, and only the same as last time. */
  readonly onlyForecastShort: number;
  readonly onlyLastShort: number;
  /** Share of the needs that lie within the range. */
  readonly within: number;
};

/** A tenth of a gram is nothing that scales show. */
const WEIGHED = 0.05;

const shortOf = (mixed: number, { needed }: MixCase): number => (needed - mixed > WEIGHED ? needed - mixed : 0);
const wasteOf = (mixed: number, { needed }: MixCase): number => Math.max(0, mixed - needed);

const figuresOf = (cases: readonly MixCase[], guess: MixGuess): MixFigures => {
  const sum = (sizeOf: (mixed: number, one: MixCase) => number): number =>
    cases.reduce((all, one) => all + sizeOf(MIXED[guess](one), one), 0);
  return {
    guess,
    wasted: sum(wasteOf),
    cost: sum((mixed, one) => wasteOf(mixed, one) * (one.price ?? 0)),
    short: sum((mixed, one) => Math.sign(shortOf(mixed, one))),
    lacking: sum(shortOf),
  };
};

const standardError = (values: readonly number[]): number => {
  const middle = mean(values);
  return Math.sqrt(values.reduce((sum, value) => sum + (value - middle) ** 2, 0) / (values.length - 1) / values.length);
};

/** The two ways side by side; undefined without a case. */
export const compareMix = (cases: readonly MixCase[]): MixComparison | undefined => {
  if (cases.length === 0) return undefined;
  const gains = [...grouped(cases, ({ client, date }) => `${client} ${date}`).values()].map((own) =>
    mean(own.map((one) => wasteOf(one.lastTime, one) - wasteOf(one.forecast.mix, one))),
  );
  const currencies = [...new Set(cases.flatMap(({ price, currency }) => (price === undefined ? [] : [currency])))];
  const isShort = (guess: MixGuess, one: MixCase): boolean => shortOf(MIXED[guess](one), one) > 0;
  const only = (guess: MixGuess, other: MixGuess): number =>
    cases.filter((one) => isShort(guess, one) && !isShort(other, one)).length;
  return {
    bowls: cases.length,
    visits: gains.length,
    currency: currencies.length === 1 ? currencies[0] : undefined,
    unpriced: cases.filter(({ price }) => price === undefined).length,
    figures: [figuresOf(cases, 'forecast'), figuresOf(cases, 'last time')],
    gain: mean(gains),
    gainError: standardError(gains),
    onlyForecastShort: only('forecast', 'last time'),
    onlyLastShort: only('last time', 'forecast'),
    within: mean(cases.map(({ needed, forecast }) => (needed >= forecast.low && needed <= forecast.high ? 1 : 0))),
  };
};

/** 1 where a difference is beyond twice its standard error, -1 where the other way, else nought. */
const told = (difference: number, error: number): number =>
  Math.abs(difference) > 2 * error && Number.isFinite(error) ? Math.sign(difference) : 0;

/** Which way is told from chance, in what is wasted and in what runs short: 1 the forecast, -1 the last time, else nought. */
export type MixVerdict = { readonly waste: number; readonly short: number };

/** What the comparison shows; a difference is told from chance when it is more than twice its standard error. */
export const mixVerdict = ({ gain, gainError, onlyForecastShort, onlyLastShort }: MixComparison): MixVerdict => ({
  waste: told(gain, gainError),
  // The sign test of McNemar: only bowls on which the two differ count. From memory.
  short: told(onlyLastShort - onlyForecastShort, Math.sqrt(onlyLastShort + onlyForecastShort)),
});
