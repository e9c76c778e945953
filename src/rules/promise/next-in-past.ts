import { monthEnd } from '../../text/dates.ts';
import { placeOf } from '../cite.ts';
import { defineRule } from '../rule.ts';

export default defineRule({
  name: 'next-in-past',
  family: 'promise',
  severity: 'fix',
  over: 'visit',
  what: 'A `next` line, or a deposit for a later visit, has a date that is not after the visit.',
  why: 'Nobody is called back for a day that is over: a month or a year was mistyped.',
  source: { kind: 'notation' },
  *check({ visit, date }) {
    for (const fact of visit.entry.facts) {
      const month =
        fact.word === 'next' && fact.month !== undefined
          ? { date: monthEnd(fact.month.when), at: fact.month.at }
          : undefined;
      const meant = fact.word === 'next' ? (fact.date ?? month) : fact.word === 'deposit' ? fact.for : undefined;
      if (meant === undefined || meant.date > date) continue;
      const what = fact.word === 'next' ? 'The next visit' : 'The visit that the deposit is for';
      yield {
        place: placeOf(visit, fact, meant.at),
        message: `${what} is ${month === meant ? 'by' : 'on'} ${meant.date}, and this one is on ${date}.`,
        todo: 'Correct the date.',
      };
    }
  },
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
