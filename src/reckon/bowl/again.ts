import type { ClientFile, Journal } from '../../journal/journal.ts';
import type { Stood } from '../../journal/source.ts';
import type { Visit } from '../../records/schema/entry.ts';
import type { Again } from '../../records/schema/visit.ts';
import { dayNumber } from '../../text/dates.ts';
import { div, type Exact, exact, exactOf, ONE } from '../../text/exact.ts';
import { nearNames } from '../../text/near.ts';
import { type At, joinSpans } from '../../text/span.ts';
import type { BowlProblem } from '../model.ts';
import { figure, listed, quoted } from '../say.ts';
import { bowlName, dayOf, mixedIn, placeIn } from './plan.ts';

/** Which bowl an `again` line means: the visit, the bowl’s name, and how much of it. */
export type Earlier = {
  readonly client: ClientFile;
  readonly visit: Stood<Visit>;
  readonly bowl: string;
  readonly share: Exact;
};

type Dates = {
  readonly byDate: ReadonlyMap<string, readonly Stood<Visit>[]>;
  /** By bowl, the dates of the visits that mix it, oldest first, each as often as visits have it. */
  readonly mixedOn: ReadonlyMap<string, readonly string[]>;
};

const datesKept = new WeakMap<ClientFile, Dates>();

/** A client's visits by their dates; sorted once, as each `again` that reaches back asks. */
const datesOf = (client: ClientFile): Dates => {
  const kept = datesKept.get(client);
  if (kept !== undefined) return kept;
  const byDate = new Map<string, Stood<Visit>[]>();
  const mixedOn = new Map<string, string[]>();
  for (const visit of client.visits) {
    const date = dayOf(visit);
    const there = byDate.get(date);
    if (there === undefined) byDate.set(date, [visit]);
    else there.push(visit);
    if (date !== '')
      for (const bowl of mixedIn(visit)) {
        const dates = mixedOn.get(bowl);
        if (dates === undefined) mixedOn.set(bowl, [date]);
        else dates.push(date);
      }
  }
  for (const dates of mixedOn.values()) dates.sort();
  const made = { byDate, mixedOn };
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
  const { byDate, mixedOn } = datesOf(client);
  const dates = mixedOn.get(bowl) ?? [];
  const isOwn = dayOf(own);
  const counts = (date: string): boolean =>
    (until === undefined || date <= until) &&
    (date !== isOwn || (byDate.get(date) ?? []).some((one) => one !== own && mixedIn(one).has(bowl)));
  const middle = positionOf(dates, day);
  const pick = (start: number, step: 1 | -1): string[] => {
    const found: string[] = [];
    let before: string | undefined;
    for (let index = start; found.length < 3; index += step) {
      const date = dates[index];
      if (date === undefined || (until !== undefined && step === 1 && date > until)) break;
      if (date !== before && counts(date)) found.push(date);
      before = date;
    }
    return found;
  };
  const far = (date: string): number => Math.abs(dayNumber(date) - dayNumber(day));
  return [...pick(middle - 1, -1), ...pick(middle, 1)].sort((a, b) => far(a) - far(b)).slice(0, 3);
};

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
    place: placeIn(visit, line, at),
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
      place: placeIn(visit, line, joinSpans(fact.bowl.at, fact.share?.at ?? from.bowl?.at ?? fact.bowl.at)),
      message: `The note does not say which day’s bowl ${bowl} is mixed again.`,
      todo:
        latest === undefined
          ? `No earlier visit has a bowl ${bowl}; write what is in it.`
          : `Write the date, as in \`${spelt(fact, latest, bowl)}\`.`,
      near: dates,
    };
  }
  const { date, at } = from.date;
  const there = datesOf(whose).byDate.get(date) ?? [];
  const last = there.findLast(hasIt);
  if (last !== undefined) return { client: whose, visit: last, bowl, share };
  const others = there.filter(isOther);
  if (others.length === 0) {
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
  const had = [...new Set(others.flatMap((one) => [...mixedIn(one)]))];
  const message =
    had.length === 0
      ? `The visit of ${date} mixes no bowl.`
      : `The visit of ${date} has ${had.length === 1 ? 'bowl' : 'bowls'} ${listed(had)}, and no ${bowl}.`;
  const todo =
    had.length === 0 ? 'Write the date of a visit that mixes it.' : `Write ${quoted(had, 'or')} after the date.`;
  return missing(from.bowl?.at ?? at, message, todo, had);
};
