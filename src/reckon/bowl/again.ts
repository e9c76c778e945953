import type { ClientFile, Journal } from '../../journal/journal.ts';
import type { Stood } from '../../journal/source.ts';
import type { Visit } from '../../records/schema/entry.ts';
import type { Again } from '../../records/schema/visit.ts';
import { dayNumber } from '../../text/dates.ts';
import { div, type Exact, exact, exactOf, ONE } from '../../text/exact.ts';
import { nearNames } from '../../text/near.ts';
import { type At, joinSpans } from '../../text/span.ts';
import { placeOf } from '../cite.ts';
import type { BowlProblem } from '../model.ts';
import { figure, firstOf, listed, quoted } from '../say.ts';
import { bowlName, dayOf, mixedIn } from './plan.ts';

/** Which bowl an `again` line means: the visit, the bowl’s name, and how much of it. */
export type Earlier = {
  readonly client: ClientFile;
  readonly visit: Stood<Visit>;
  readonly bowl: string;
  readonly share: Exact;
};

type Visits = readonly Stood<Visit>[];

type Dates = {
  readonly byDate: ReadonlyMap<string, Visits>;
  /** By bowl and date, the visits that mix it, in order. */
  readonly mixedOn: ReadonlyMap<string, ReadonlyMap<string, Visits>>;
  /** By bowl, the dates on which it was mixed, oldest first; sorted when they are first asked for. */
  readonly sorted: Map<string, readonly string[]>;
};

const addTo = <K>(map: Map<K, Stood<Visit>[]>, key: K, visit: Stood<Visit>): void => {
  const there = map.get(key);
  if (there === undefined) map.set(key, [visit]);
  else there.push(visit);
};

const datesKept = new WeakMap<ClientFile, Dates>();

/** A client's visits by their dates; sorted once, as each `again` that reaches back asks. */
const datesOf = (client: ClientFile): Dates => {
  const kept = datesKept.get(client);
  if (kept !== undefined) return kept;
  const byDate = new Map<string, Stood<Visit>[]>();
  const mixedOn = new Map<string, Map<string, Stood<Visit>[]>>();
  for (const visit of client.visits) {
    const date = dayOf(visit);
    addTo(byDate, date, visit);
    if (date === '') continue;
    for (const bowl of mixedIn(visit)) {
      let dates = mixedOn.get(bowl);
      if (dates === undefined) {
        dates = new Map();
        mixedOn.set(bowl, dates);
      }
      addTo(dates, date, visit);
    }
  }
  const made = { byDate, mixedOn, sorted: new Map() };
  datesKept.set(client, made);
  return made;
};

/** The first position in sorted dates that is not before a day. */
const positionOf = (dates: readonly string[], day: string): number => {
  let [from, to] = [0, dates.length];
  while (from < to) {
    const middle = (from + to) >> 1;
    if ((dates[middle] ?? '') < day) from = middle + 1;
    else to = middle;
  }
  return from;
};

type Without = { readonly own: Stood<Visit>; readonly until?: string };

/**
 * The dates nearest to a day on which a client's visits other than `own` mix a bowl, nearest first, of two as near the
 * earlier, at most three.
 */
const nearest = (client: ClientFile, bowl: string, day: string, { own, until }: Without): string[] => {
  const { mixedOn, sorted } = datesOf(client);
  const on = mixedOn.get(bowl);
  const dates = sorted.get(bowl) ?? [...(on?.keys() ?? [])].sort();
  sorted.set(bowl, dates);
  const ownDay = dayOf(own);
  const counts = (date: string): boolean =>
    (until === undefined || date <= until) && (date !== ownDay || (on?.get(date) ?? []).some((one) => one !== own));
  const middle = positionOf(dates, day);
  const pick = (start: number, step: 1 | -1): string[] => {
    const found: string[] = [];
    for (let index = start; found.length < 3; index += step) {
      const date = dates[index];
      if (date === undefined || (until !== undefined && step === 1 && date > until)) break;
      if (counts(date)) found.push(date);
    }
    return found;
  };
  const far = (date: string): number => Math.abs(dayNumber(date) - dayNumber(day));
  return [...pick(middle - 1, -1), ...pick(middle, 1)].sort((a, b) => far(a) - far(b)).slice(0, 3);
};

/** The first bowls that some of the visits mix, each once. */
const bowlsOf = (visits: Visits, counts: (visit: Stood<Visit>) => boolean): string[] => {
  const names = new Set<string>();
  for (const visit of visits) {
    if (counts(visit)) for (const name of firstOf(mixedIn(visit))) names.add(name);
    if (names.size >= ENOUGH) break;
  }
  return firstOf(names);
};

/** More names than a sentence gives. */
const ENOUGH = 20;

/** What was typed, with a date in its place. */
const spelt = ({ bowl, share, from }: Again, date: string, named: string): string => {
  const client = from.client === undefined ? '' : `${from.client.name} `;
  return `again ${bowlName(bowl)} from ${client}${date} ${named}${share === undefined ? '' : ` ${figure(exactOf(share.value))}%`}`;
};

/**
 * Finds the bowl that an `again` line means: of the client and the date it gives, or another bowl of the same visit. A
 * bowl is looked for by its letter; without one, by its own.
 */
export const findEarlier = (
  { clients }: Pick<Journal, 'clients'>,
  { visit, client }: { readonly visit: Stood<Visit>; readonly client: ClientFile },
  fact: Again,
  line: number,
): Earlier | BowlProblem => {
  const { from } = fact;
  const own = bowlName(fact.bowl);
  const bowl = from.bowl === undefined ? own : bowlName(from.bowl);
  const share = fact.share === undefined ? ONE : div(exactOf(fact.share.value), exact(100));
  const isOther = (one: Stood<Visit>): boolean => one !== visit || bowl !== own;
  const hasIt = (one: Stood<Visit>): boolean => isOther(one) && mixedIn(one).has(bowl);
  const missing = (at: At, message: string, todo: string, near: readonly string[]): BowlProblem => ({
    kind: 'again-missing',
    place: placeOf(visit, { line }, at),
    message,
    todo,
    near,
  });
  let whose = client;
  if (from.client !== undefined) {
    const { name, at } = from.client;
    const named = clients.get(name);
    if (named === undefined) {
      const near = nearNames(name, clients.keys());
      const todo = near.length > 0 ? `Write ${quoted(near, 'or')}.` : 'Write the client’s name as in her header.';
      return missing(at, `There is no client \`${name}\`.`, todo, near);
    }
    whose = named;
  }
  if (from.date === undefined) {
    if (from.client === undefined && hasIt(visit)) return { client, visit, bowl, share };
    const today = dayOf(visit);
    const dates = nearest(whose, bowl, today, { own: visit, until: today });
    const [latest] = dates;
    return {
      kind: 'again-undated',
      place: placeOf(visit, { line }, joinSpans(fact.bowl.at, fact.share?.at ?? from.bowl?.at ?? fact.bowl.at)),
      message: `The note does not say which day’s bowl ${bowl} is mixed again.`,
      todo:
        latest === undefined
          ? `No earlier visit has a bowl ${bowl}; write what is in it.`
          : `Write the date, as in \`${spelt(fact, latest, bowl)}\`.`,
      near: dates,
    };
  }
  const { date, at } = from.date;
  const { byDate, mixedOn } = datesOf(whose);
  const last = mixedOn.get(bowl)?.get(date)?.findLast(isOther);
  if (last !== undefined) return { client: whose, visit: last, bowl, share };
  const there = byDate.get(date) ?? [];
  if (!there.some(isOther)) {
    const dates = nearest(whose, bowl, date, { own: visit });
    const todo =
      dates.length > 0
        ? `The nearest with a bowl ${bowl}: ${listed(dates)}.`
        : `No visit has a bowl ${bowl}; write what is in it.`;
    const message =
      there.length > 0
        ? `${date} is the day of this visit, and bowl ${bowl} is this one.`
        : `${whose.full} has no visit on ${date}.`;
    return missing(at, message, todo, dates);
  }
  const had = bowlsOf(there, isOther);
  const message =
    had.length === 0
      ? `The visit of ${date} mixes no bowl.`
      : `The visit of ${date} has ${had.length === 1 ? 'bowl' : 'bowls'} ${listed(had)}, and no ${bowl}.`;
  const todo =
    had.length === 0 ? 'Write the date of a visit that mixes it.' : `Write ${quoted(had, 'or')} after the date.`;
  return missing(from.bowl?.at ?? at, message, todo, had);
};
