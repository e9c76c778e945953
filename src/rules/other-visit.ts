import { placeOf } from '../reckon/cite.ts';
import type { FactsOf, VisitReckoned } from '../reckon/model.ts';
import { listed } from '../reckon/say.ts';
import type { VisitFact } from '../records/schema/entry.ts';
import type { DateText } from '../records/schema/values.ts';
import { daysBetween } from '../text/dates.ts';
import { type Found, foundEach, NONE } from './rule.ts';

/** The dates nearest to a day, nearest first and of two as near the earlier, at most three. */
const nearest = (dates: readonly string[], day: string): string[] => {
  const far = (date: string): number => Math.abs(daysBetween(date, day));
  return [...new Set(dates)]
    .sort()
    .sort((a, b) => far(a) - far(b))
    .slice(0, 3);
};

type OfAnother = { readonly word: string; readonly line: number; readonly date: DateText };

/**
 * The `redo` or `about` lines, as `word` says, whose visit the client does not have. Before the client's first visit in
 * these notes there may have been one that was never typed, so there it is only worth a thought.
 */
export const visitsNotFound = (
  word: 'redo' | 'about',
  own: VisitReckoned,
  visits: readonly VisitReckoned[],
): readonly Found[] => {
  const isOfAnother = (fact: VisitFact): fact is FactsOf<'redo' | 'about'> => fact.word === word;
  const lines = own.visit.entry.facts.filter(isOfAnother);
  if (lines.length === 0) return NONE;
  return foundEach(lines, (fact) => {
    if (visits.some((visit) => visit !== own && visit.date === fact.date.date)) return undefined;
    return notFound(
      fact,
      own,
      visits.filter((visit) => visit !== own).map(({ date }) => date),
    );
  });
};

const notFound = (fact: OfAnother, own: VisitReckoned, dates: readonly string[]): Found => {
  const { date, at } = fact.date;
  const before = dates.filter((other) => other <= own.date);
  const near = nearest(before, date);
  const isEarlier = [own.date, ...dates].every((other) => other > date);
  return {
    place: placeOf(own.visit, fact, at),
    message:
      date === own.date
        ? `${date} is the day of this visit, and the \`${fact.word}\` line is about another.`
        : `${own.client.full} has no visit on ${date}.`,
    todo: near.length === 0 ? 'Correct the date.' : `The nearest: ${listed(near)}.`,
    ...(isEarlier && { severity: 'mind' }),
  };
};
