import type { ClientFile } from '../journal/journal.ts';
import type { Stood } from '../journal/source.ts';
import { listed } from '../reckon/say.ts';
import type { Visit } from '../records/schema/entry.ts';
import type { DateText } from '../records/schema/values.ts';
import { daysBetween } from '../text/dates.ts';
import { placeOf } from './cite.ts';
import type { Found } from './rule.ts';

const dateOf = ({ entry }: Stood<Visit>): string => entry.date?.date ?? '';

/** The dates nearest to a day, nearest first, at most three. */
const nearest = (visits: readonly Stood<Visit>[], day: string): string[] =>
  [...new Set(visits.map(dateOf))]
    .sort((a, b) => Math.abs(daysBetween(a, day)) - Math.abs(daysBetween(b, day)) || (a < b ? -1 : 1))
    .slice(0, 3);

/**
 * A `redo` or `about` line whose visit the client does not have. Before the client's first visit in these notes there
 * may have been one that was never typed, so there it is only worth a thought.
 */
export const visitNotFound = (
  client: ClientFile,
  stood: Stood<Visit>,
  fact: { readonly word: string; readonly line: number; readonly date: DateText },
): Found | undefined => {
  const { date, at } = fact.date;
  const others = client.visits.filter((visit) => visit !== stood);
  if (others.some((visit) => dateOf(visit) === date)) return undefined;
  const near = nearest(
    others.filter((visit) => dateOf(visit) <= dateOf(stood)),
    date,
  );
  const isOwn = date === dateOf(stood);
  const isEarlier = client.visits.every((visit) => dateOf(visit) > date);
  return {
    place: placeOf(stood, fact, at),
    message: isOwn
      ? `${date} is the day of this visit, and the \`${fact.word}\` line is about another.`
      : `${client.full} has no visit on ${date}.`,
    todo: near.length === 0 ? 'Correct the date.' : `The nearest: ${listed(near)}.`,
    ...(isEarlier && { severity: 'mind' }),
  };
};
