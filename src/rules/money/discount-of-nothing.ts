import { placeOf, wordsPlace } from '../../reckon/cite.ts';
import { factsOf } from '../../reckon/facts-of.ts';
import { defineRule, foundEach } from '../rule.ts';

export default defineRule({
  name: 'discount-of-nothing',
  family: 'money',
  severity: 'fix',
  bears: 'never',
  over: 'visit',
  looksAt: { words: ['charge'] },
  what: 'A discount in per cent stands before anything it could be taken from.',
  why: 'A discount is taken from the charges above it, so here it takes nothing off.',
  source: { kind: 'notation' },
  check({ visit }, { journal }) {
    let charged = false;
    return foundEach(factsOf(visit, 'charge'), (fact) => {
      if (fact.total !== undefined) return undefined;
      charged ||= fact.discount === undefined;
      if (charged) return undefined;
      return {
        place: wordsPlace(journal, placeOf(visit, fact), /discount\s+[\d.,]+\s*%/iu),
        message: `The discount of ${fact.discount} % stands before every charge, so it takes nothing off.`,
        todo: 'Move the line under the charges that it is taken from.',
      };
    });
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
