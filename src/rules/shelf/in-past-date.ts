import { placeOf } from '../../reckon/cite.ts';
import { lastDayOf } from '../lots.ts';
import { defineRule } from '../rule.ts';

export default defineRule({
  name: 'in-past-date',
  family: 'shelf',
  severity: 'fix',
  bears: 'never',
  over: 'shelf',
  what: 'Stock comes in with a `use-by` that is over on the day it comes in.',
  why: 'A year is soon mistyped, and every use of the lot would be measured by it.',
  source: { kind: 'notation' },
  *check({ stocks }) {
    for (const stood of stocks) {
      const { date } = stood.entry;
      if (date === undefined) continue;
      for (const fact of stood.entry.facts) {
        if (fact.word !== 'in' || fact.useBy === undefined || lastDayOf(fact.useBy.when) >= date.date) continue;
        yield {
          place: placeOf(stood, fact, fact.useBy.at),
          message: `\`${fact.product.name}\` came in on ${date.date}, and its date is ${fact.useBy.when}.`,
          todo: 'Correct the date, or send the pack back.',
          also: [{ place: placeOf(stood, { line: 0 }, date.at), says: 'came in then' }],
        };
      }
    }
  },
  bad: `
    product clay "Peregrine clay" lightener
      pack 500 g
    stock 2026-08-01
      in clay 2 packs lot K2231 use-by 2026-01
                                       ^^^^^^^`,
  good: `
    product clay "Peregrine clay" lightener
      pack 500 g
    stock 2026-08-01
      in clay 2 packs lot K2231 use-by 2028-01`,
});
