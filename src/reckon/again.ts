import type { ClientFile, Journal } from '../journal/journal.ts';
import type { Stood } from '../journal/source.ts';
import type { Visit } from '../records/schema/entry.ts';
import type { Again } from '../records/schema/visit.ts';
import { dayNumber } from '../text/dates.ts';
import { div, type Exact, exact, exactOf, ONE } from '../text/exact.ts';
import { nearNames } from '../text/near.ts';
import { type At, joinSpans } from '../text/span.ts';
import { bowlName, dayOf, mixedIn, placeIn } from './bowl-plan.ts';
import type { BowlProblem } from './model.ts';
import { figure, listed, quoted } from './say.ts';

/** Which bowl an `again` line means: the visit, the bowl’s name, and how much of it. */
export type Earlier = {
  readonly client: ClientFile;
  readonly visit: Stood<Visit>;
  readonly bowl: string;
  readonly share: Exact;
};

/** The dates nearest to a day, nearest first, of two as near the earlier, at most three. */
const nearest = (visits: readonly Stood<Visit>[], day: string): string[] => {
  const far = (date: string): number => Math.abs(dayNumber(date) - dayNumber(day));
  return [...new Set(visits.map(dayOf))].sort((a, b) => far(a) - far(b)).slice(0, 3);
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
    const dates = nearest(
      whose.visits.filter((one) => one !== visit && dayOf(one) <= today && hasIt(one)),
      today,
    );
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
  const there = whose.visits.filter((one) => dayOf(one) === date);
  const last = there.findLast(hasIt);
  if (last !== undefined) return { client: whose, visit: last, bowl, share };
  const others = there.filter(isOther);
  if (others.length === 0) {
    const dates = nearest(
      whose.visits.filter((one) => one !== visit && hasIt(one)),
      date,
    );
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
