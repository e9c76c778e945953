import type { Stood } from '../journal/source.ts';
import { sumText } from '../pages/prep-sums.ts';
import { nextIn } from '../reckon/due-window.ts';
import type { Plan, PlannedBowl } from '../reckon/plan.ts';
import { figure } from '../reckon/say.ts';
import type { Visit } from '../records/schema/entry.ts';
import type { Name } from '../records/schema/values.ts';
import type { Next } from '../records/schema/visit.ts';
import { div, type Exact, equal, exact, mul, roundTo } from '../text/exact.ts';
import { sliceOf } from '../text/span.ts';
import { timeText } from './today.ts';

/**
 * What a bowl is made to, as per cent of the one that is made again: the fewest decimals that come to the grams planned.
 * Without a weight to go by it is what `next` asks for.
 */
const shareText = (planned: PlannedBowl | undefined, scale: Exact): string => {
  const { bowl, total, asked = 0 } = planned ?? {};
  if (bowl?.total === undefined || total === undefined) return asked === 0 ? '' : ` ${100 + asked}%`;
  const whole = bowl.total;
  const share = div(mul(total, exact(100)), whole);
  const shares = [0, 1, 2].map((places) => roundTo(share, exact(1, 10 ** places)));
  const found = shares.find((one) => equal(roundTo(div(mul(whole, one), exact(100)), scale), total)) ?? shares.at(-1);
  return found === undefined || equal(found, exact(100)) ? '' : ` ${figure(found)}%`;
};

/** `again A from 2026-09-04 A 80%` for every bowl of the visit, at the share that comes to the grams planned. */
const againLines = ({ made, others, plan, typed }: Stub): string[] => {
  const date = made.entry.date?.date ?? '';
  const bowls = new Map<string, string>();
  for (const fact of made.entry.facts)
    if ((fact.word === 'bowl' || fact.word === 'again') && !others.has(fact.bowl.name.toUpperCase()))
      if (!bowls.has(fact.bowl.name)) bowls.set(fact.bowl.name, sliceOf(typed(made, fact.line), fact.bowl.at));
  return [...bowls].map(([key, bowl]) => {
    const planned = plan?.bowls.find((one) => one.bowl.name === key.toUpperCase());
    return `  again ${bowl} from ${date} ${bowl}${plan === undefined ? '' : shareText(planned, plan.visit.salon.scale)}`;
  });
};

/** How the grams of each bowl were forecast, as a note to read before mixing; what `next` asks for is noted already. */
const forecastLines = (plan: Plan | undefined, others: ReadonlySet<string>): string[] =>
  (plan?.bowls ?? []).flatMap((planned) => {
    const { bowl, by, total } = planned;
    // The sheet's own words, without its marks.
    return by === 'forecast' && total !== undefined && !others.has(bowl.name)
      ? [`  note bowl ${bowl.name}: ${sumText(planned).replaceAll('**', '')}`]
      : [];
  });

/** What `next` asks for besides a bowl's share, as a note to read before beginning. */
const plannedLines = (date: string, next: Next | undefined): string[] => {
  const words = next?.changes.filter(({ bowl, percent }) => bowl === undefined || percent === undefined) ?? [];
  const said = [...words.map(({ text }) => text), ...(next?.says === undefined ? [] : [next.says.text])];
  return said.length === 0 ? [] : [`  note planned on ${date}: ${said.join(', ')}`];
};

/** Whether a line places bowls, and none that the visit wants. */
const placesOthers = (fact: Visit['facts'][number], others: ReadonlySet<string>): boolean =>
  fact.word === 'place' && fact.bowls.length > 0 && fact.bowls.every(({ name }) => others.has(name.toUpperCase()));

/** What a new visit is begun from. */
export type Stub = {
  /** Its day. */
  readonly on: string;
  /** The visit whose bowls are made again. */
  readonly made: Stood<Visit>;
  /** Names of its bowls for a service that is not asked for. */
  readonly others: ReadonlySet<string>;
  /** Its bowls made to the need of the day. */
  readonly plan: Plan | undefined;
  /** The visit whose `next` asks for this one; often the same. */
  readonly asks: Stood<Visit>;
  /** The last visit: who did it, and where. */
  readonly last: Stood<Visit>;
  /** A line of a visit as it is typed; 0 is its header. */
  readonly typed: (visit: Stood<Visit>, line: number) => string;
};

/** The lines of a new visit made from an earlier one and a `next`: bowls made again, aims and places as they were typed. */
export const stubLines = (stub: Stub): string[] => {
  const { on, made, others, plan, asks, last, typed } = stub;
  const next = nextIn(asks);
  const time = next?.date?.date === on && next.time?.minutes !== undefined ? ` ${timeText(next.time.minutes)}` : '';
  const named = (word: string, name: Name | undefined): string =>
    name === undefined ? '' : ` ${word}${sliceOf(typed(last, 0), name.at)}`;
  const { client, by, salon } = last.entry;
  const header = `visit ${on}${time}${named('', client)}${named('by ', by)}${named('at ', salon)}`;
  const kept = (word: string): string[] => {
    const facts = made.entry.facts.filter((fact) => fact.word === word && !placesOthers(fact, others));
    return [...new Set(facts.map((fact) => `  ${typed(made, fact.line).trim()}`))];
  };
  return [
    header,
    ...plannedLines(asks.entry.date?.date ?? '', next),
    ...forecastLines(plan, others),
    ...kept('aim'),
    ...againLines(stub),
    ...kept('place'),
    ...kept('leave'),
  ];
};
