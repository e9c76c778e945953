import { div, type Exact, exact, exactOf, largestRemainder, mul, roundTo, sign, sub, sum } from '../../text/exact.ts';
import { type MixForecast, SALON_UNTOLD, type SalonMix } from '../forecast/forecast.ts';
import { furtherOf } from '../forecast/need.ts';
import { nextBowls } from '../forecast/next-bowls.ts';
import { putsOnColour, reachesRoots } from '../head/services.ts';
import type { BowlReckoned, Portion, VisitReckoned } from '../model.ts';
import { type AskedWords, askedShare, askedWords } from './asked-words.ts';

/**
 * What to mix on a day: the bowls of an earlier visit, made to the day's need. Nowhere else is that decided.
 *
 * Reads: the client's visits before the day, what the salon's bowls teach. Gives: each bowl's weight and how it came
 * about. Runs again: when one of those visits changes.
 */

export type PlannedPortion = {
  readonly portion: Portion;
  /** Grams in all mixes of the bowl the last time. */
  readonly last: Exact | undefined;
  /** Grams as the scales can show them; undefined where the bowl is not known. */
  readonly mix: Exact | undefined;
};

export type PlannedBowl = {
  readonly bowl: BowlReckoned;
  /** Its name and those of its further mixes. */
  readonly mixes: readonly string[];
  /** Grams the last time, further mixes among them. */
  readonly mixed: Exact | undefined;
  /** Grams left over then; undefined where no note says. */
  readonly left: Exact | undefined;
  /** Per cent more or less that the visit's `next` asks for. It goes before the forecast. */
  readonly asked: number | undefined;
  /** What the notes say in words of its mix for next time: no grams are given for it then. */
  readonly words: readonly AskedWords[];
  /** From what bowls like it needed; undefined where the notes do not tell what is in it, or that any of it was used. */
  readonly forecast: MixForecast | undefined;
  /** What the weight is taken from: words, what was asked for, the forecast, or what was used the last time. */
  readonly by: 'words' | 'asked' | 'forecast' | 'last time';
  /** Grams before they are rounded to the scales, and after; undefined where words are to be read instead. */
  readonly need: Exact | undefined;
  readonly total: Exact | undefined;
  readonly portions: readonly PlannedPortion[];
};

/** The bowls of one earlier visit, planned again. */
export type Plan = { readonly visit: VisitReckoned; readonly bowls: readonly PlannedBowl[] };

type Whole = Pick<PlannedBowl, 'bowl' | 'mixes' | 'mixed' | 'left'>;

/** Lines of a visit that make a further mix. */
const moreLines = ({ visit }: VisitReckoned): ReadonlySet<number> =>
  new Set(visit.entry.facts.flatMap(({ word, line }) => (word === 'more' ? [line] : [])));

/** The bowls of a visit, each with its further mixes. */
const wholesOf = (visit: VisitReckoned): Whole[] => {
  const lines = moreLines(visit);
  const own = visit.bowls.filter(({ place, portions }) => !lines.has(place.line) && portions.length > 0);
  return own.map((bowl): Whole => {
    const group = bowl.mixedWithMore === undefined ? [bowl] : [bowl, ...furtherOf(visit, visit.bowls, bowl)];
    const left = group.flatMap((one) => one.left?.weight ?? []);
    return {
      bowl,
      mixes: group.map(({ name }) => name),
      mixed: bowl.mixedWithMore ?? bowl.mixed,
      left: left.length > 0 ? sum(left) : undefined,
    };
  });
};

/** Forecast grams as exact hundredths. */
export const hundredths = (grams: number): Exact => exact(Math.round(grams * 100), 100);

type Decided = Pick<PlannedBowl, 'by' | 'need'>;

type Wish = Pick<PlannedBowl, 'asked' | 'words'>;

/** The colourist's own wish, in words or by a share, then the forecast, then what was used the last time. */
const decide = ({ mixed, left }: Whole, { asked, words }: Wish, forecast: MixForecast | undefined): Decided => {
  if (words.length > 0) return { by: 'words', need: undefined };
  if (asked !== undefined) return { by: 'asked', need: mixed && div(mul(mixed, exactOf(100 + asked)), exact(100)) };
  if (forecast !== undefined) return { by: 'forecast', need: hundredths(forecast.mix) };
  return { by: 'last time', need: mixed && left ? sub(mixed, left) : mixed };
};

/** What the scales said of a portion, or could show, with as much again for each further mix. */
const lastOf = ({ weighed, shown }: Portion, more: Exact): Exact | undefined => {
  const once = weighed ?? shown;
  return once && mul(once, more);
};

const planBowl = (visit: VisitReckoned, whole: Whole, wish: Wish, forecast: MixForecast | undefined): PlannedBowl => {
  const { bowl, mixed } = whole;
  const { by, need } = decide(whole, wish, forecast);
  const weights = bowl.portions.map(({ weight }) => weight);
  const known = weights.filter((weight) => weight !== undefined);
  const isKnown =
    need !== undefined && sign(need) > 0 && known.length === weights.length && known.some((weight) => sign(weight) > 0);
  const { scale } = visit.salon;
  const mixes = isKnown ? largestRemainder(known, need, scale) : [];
  const more = mixed && bowl.mixed && sign(bowl.mixed) > 0 ? div(mixed, bowl.mixed) : exact(1);
  return {
    ...whole,
    ...wish,
    forecast,
    by,
    need: isKnown ? need : undefined,
    total: isKnown ? roundTo(need, scale) : undefined,
    portions: bowl.portions.map((portion, index) => ({
      portion,
      last: lastOf(portion, more),
      mix: mixes[index],
    })),
  };
};

/** What the notes wish for each bowl of a visit, before a day. */
const wishesOf = (visit: VisitReckoned, visits: readonly VisitReckoned[], on: string): ((whole: Whole) => Wish) => {
  const words = askedWords(visit, visits, on);
  return ({ bowl, mixes }) => ({
    asked: askedShare(visit, bowl, visits, on),
    words: mixes
      .flatMap((name) => words.get(name) ?? [])
      .filter((one, at, all) => all.findIndex(({ text }) => text === one.text) === at),
  });
};

/**
 * The bowls of a visit made to the need of a day: as the notes ask for, else by the forecast, else what was used of them.
 * Of a bowl that they speak of in words no grams are given. `visits` are the client's, oldest first; `salon` what the salon's bowls teach.
 */
export const planVisit = (
  visit: VisitReckoned,
  visits: readonly VisitReckoned[],
  on: string,
  salon: SalonMix = SALON_UNTOLD,
): Plan => {
  const forecasts = new Map(nextBowls(visit, visits, on, salon).map(({ bowl, forecast }) => [bowl, forecast]));
  const wish = wishesOf(visit, visits, on);
  const bowls = wholesOf(visit).map((whole) => planBowl(visit, whole, wish(whole), forecasts.get(whole.bowl.name)));
  return { visit, bowls };
};

/** The bowls of a visit that `next` asks to change by a share, as it asks. `visits` are the client's, oldest first. */
export const askedBowls = (visit: VisitReckoned, visits: readonly VisitReckoned[], on: string): PlannedBowl[] => {
  const wish = wishesOf(visit, visits, on);
  return wholesOf(visit)
    .map((whole) => planBowl(visit, whole, wish(whole), undefined))
    .filter(({ by }) => by === 'asked');
};

/**
 * The bowls of the last colour made to the need of a day; where that visit did not do the roots, those of the last that
 * did come after it.
 */
export const plansFor = (visits: readonly VisitReckoned[], on: string, salon: SalonMix = SALON_UNTOLD): Plan[] => {
  const before = visits.filter(({ date }) => date < on);
  const last = before.findLast(putsOnColour);
  const roots = before.findLast(reachesRoots);
  const from = last === undefined ? [] : roots === undefined || roots === last ? [last] : [last, roots];
  return from.map((visit) => planVisit(visit, before, on, salon));
};
