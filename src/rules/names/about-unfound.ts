import { visitsNotFound } from '../other-visit.ts';
import { defineRule } from '../rule.ts';

export default defineRule({
  name: 'about-unfound',
  family: 'names',
  severity: 'fix',
  bears: 'never',
  over: 'visit',
  looksAt: { words: ['about'] },
  what: 'An `about` line names a day on which the client has no visit.',
  why: 'The news belongs on the card of the visit that it is about, and is not shown there.',
  source: { kind: 'notation' },
  check: (visit, { visits }) => visitsNotFound('about', visit, visits),
  bad: `
    client wren-abbott "Wren Abbott"
    visit 2026-05-02 wren-abbott
    visit 2026-09-04 wren-abbott
      about 2026-05-20 ends "went mauve after two washes"
            ^^^^^^^^^^`,
  good: `
    client wren-abbott "Wren Abbott"
    visit 2026-05-02 wren-abbott
    visit 2026-09-04 wren-abbott
      about 2026-05-02 ends "went mauve after two washes"`,
});
