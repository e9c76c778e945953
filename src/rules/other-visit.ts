import type { ClientFile } from '../journal/journal.ts';
import { placeOf } from '../reckon/cite.ts';
import type { VisitReckoned } from '../reckon/model.ts';
import { listed } from '../reckon/say.ts';
import type { DateText } from '../records/schema/values.ts';
import { daysBetween } from '../text/dates.ts';
import type { Found } from './rule.ts';

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
export function* visitsNotFound(
  word: 'redo' | 'about',
  { full }: ClientFile,
  visits: readonly VisitReckoned[],
): Generator<Found> {
  const onDay = new Map<string, number>();
  for (const { date } of visits) onDay.set(date, (onDay.get(date) ?? 0) + 1);
  for (const own of visits) {
    for (const fact of own.visit.entry.facts) {
      if (fact.word !== word) continue;
      const others = (onDay.get(fact.date.date) ?? 0) - (fact.date.date === own.date ? 1 : 0);
      if (others > 0) continue;
      const dates = visits.filter((visit) => visit !== own).map(({ date }) => date);
      yield notFound(fact, own, full, dates);
    }
  }
}

const notFound = (fact: OfAnother, own: VisitReckoned, full: string, dates: readonly string[]): Found => {
  const { date, at } = fact.date;
  const before = dates.filter((other) => other <= own.date);
  const near = nearest(before, date);
  const isEarlier = [own.date, ...dates].every((other) => other > date);
  return {
    place: placeOf(own.visit, fact, at),
    message:
      date === own.date
        ? `${date} is the day of this visit, and the \`${fact.word}\` line is about another.`
        : `${full} has no visit on ${date}.`,
    todo: near.length === 0 ? 'Correct the date.' : `The nearest: ${listed(near)}.`,
    ...(isEarlier && { severity: 'mind' }),
  };
};
