import { placeOf, wordsPlace } from '../cite.ts';
import { defineRule } from '../rule.ts';

export default defineRule({
  name: 'discount-of-nothing',
  family: 'money',
  severity: 'fix',
  over: 'visit',
  what: 'A discount in per cent stands before anything it could be taken from.',
  why: 'A discount is taken from the charges above it, so here it takes nothing off.',
  source: { kind: 'notation' },
  *check({ visit }, journal) {
    for (const fact of visit.entry.facts) {
      if (fact.word !== 'charge' || fact.total !== undefined) continue;
      if (fact.discount === undefined) return;
      yield {
        place: wordsPlace(journal, placeOf(visit, fact), /discount\s+[\d.,]+\s*%/iu),
        message: `The discount of ${fact.discount} % stands before every charge, so it takes nothing off.`,
        todo: 'Move the line under the charges that it is taken from.',
      };
    }
  },
  bad: `
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      charge discount 20%
             ^^^^^^^^^^^^
      charge foils 95`,
  good: `
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      charge foils 95
      charge discount 20%`,
});
