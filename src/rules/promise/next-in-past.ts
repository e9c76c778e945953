import { placeOf } from '../../reckon/cite.ts';
import type { VisitFact } from '../../records/schema/entry.ts';
import { monthEnd } from '../../text/dates.ts';
import type { At } from '../../text/span.ts';
import { defineRule, foundEach } from '../rule.ts';

/** The day that a `next` line or a deposit is for; of a month its last. */
const meantBy = (fact: VisitFact): { readonly date: string; readonly at: At; readonly says: string } | undefined => {
  if (fact.word === 'deposit') return fact.for && { date: fact.for.date, at: fact.for.at, says: 'on' };
  if (fact.word !== 'next') return undefined;
  if (fact.date !== undefined) return { date: fact.date.date, at: fact.date.at, says: 'on' };
  return fact.month && { date: monthEnd(fact.month.when), at: fact.month.at, says: 'by' };
};

export default defineRule({
  name: 'next-in-past',
  family: 'promise',
  severity: 'fix',
  bears: 'never',
  over: 'visit',
  looksAt: { words: ['next', 'deposit'] },
  what: 'A `next` line, or a deposit for a later visit, has a date that is not after the visit.',
  why: 'Nobody is called back for a day that is over: a month or a year was mistyped.',
  source: { kind: 'notation' },
  check: ({ visit, date }) =>
    foundEach(visit.entry.facts, (fact) => {
      const meant = meantBy(fact);
      if (meant === undefined || meant.date > date) return undefined;
      const what = fact.word === 'next' ? 'The next visit' : 'The visit that the deposit is for';
      return {
        place: placeOf(visit, fact, meant.at),
        message: `${what} is ${meant.says} ${meant.date}, and this one is on ${date}.`,
        todo: 'Correct the date.',
      };
    }),
  bad: `
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      next 2026-01-09 14:00 foils
           ^^^^^^^^^^`,
  good: `
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      next 2027-01-09 14:00 foils`,
});
