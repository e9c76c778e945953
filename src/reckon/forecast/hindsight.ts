import { forecastMix, type MixForecast, type SalonMix, salonMix } from './forecast.ts';
import { alike, type Need } from './need.ts';

/**
 * How the forecast would have done: every bowl whose need is told is left out in turn and forecast from the others.
 *
 * Reads: what every bowl needed. Gives: a case a bowl, with the forecast and the same as last time.
 */

/** What a bowl is forecast from: the visits before it, as in daily use, or all others. */
export type Basis = 'before' | 'others';

/** One bowl, in grams. */
export type MixCase = {
  readonly client: string;
  readonly date: string;
  readonly bowl: string;
  readonly product: string;
  readonly needed: number;
  readonly forecast: Pick<MixForecast, 'need' | 'low' | 'high' | 'mix'> & { readonly bowls: number };
  /** What the latest bowl like it before held. */
  readonly lastTime: number;
  /** Minor units of the currency a gram of it; undefined where something in it has no price. */
  readonly price: number | undefined;
  readonly currency: string | undefined;
};

export type MixBacktest = {
  readonly basis: Basis;
  readonly cases: readonly MixCase[];
  /** Bowls left out: with no `left` line, and the first of their kind. */
  readonly untold: number;
  readonly first: number;
};

type SalonBefore = (need: Need) => SalonMix;

/** What the salon knew on a day, asked for day by day; bowls of one day share it. */
const salonByDay = (needs: readonly Need[]): SalonBefore => {
  let known: { readonly date: string; readonly salon: SalonMix } | undefined;
  return ({ date }) => {
    if (known?.date !== date) known = { date, salon: salonMix(needs.filter((need) => need.date < date)) };
    return known.salon;
  };
};

/** What all other clients teach. */
const salonByClient = (needs: readonly Need[]): SalonBefore => {
  const known = new Map<string, SalonMix>();
  return ({ client }) => {
    const salon = known.get(client) ?? salonMix(needs.filter((need) => need.client !== client));
    known.set(client, salon);
    return salon;
  };
};

const caseOf = (need: Need, own: readonly Need[], salonOf: SalonBefore, basis: Basis): MixCase | undefined => {
  const before = own.filter(({ date }) => date < need.date);
  const last = alike(before, need).needs.at(-1);
  const known = basis === 'before' ? before : own.filter(({ date }) => date !== need.date);
  const found = last && forecastMix(known, need, salonOf(need));
  if (last === undefined || found === undefined) return undefined;
  const { client, date, bowl, product, used, price, currency } = need;
  const { need: likely, low, high, mix, from } = found;
  const forecast = { need: likely, low, high, mix, bowls: from.length };
  return { client, date, bowl, product, needed: used, forecast, lastTime: last.mixed, price, currency };
};

/** Leaves out every bowl in turn. `needs` are those of the whole journal, oldest first. */
export const hindsightMix = (needs: readonly Need[], basis: Basis = 'before'): MixBacktest => {
  const byClient = new Map<string, Need[]>();
  const rows = needs.map((need) => {
    const own = byClient.get(need.client) ?? [];
    own.push(need);
    byClient.set(need.client, own);
    return { need, own };
  });
  const salonOf = basis === 'before' ? salonByDay(needs) : salonByClient(needs);
  const told = rows.filter(({ need }) => need.told);
  const cases = told.flatMap(({ need, own }) => caseOf(need, own, salonOf, basis) ?? []);
  return { basis, cases, untold: needs.length - told.length, first: told.length - cases.length };
};
