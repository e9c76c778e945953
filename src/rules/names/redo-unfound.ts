import { visitsNotFound } from '../other-visit.ts';
import { defineRule } from '../rule.ts';

export default defineRule({
  name: 'redo-unfound',
  family: 'names',
  severity: 'fix',
  bears: 'never',
  over: 'visit',
  looksAt: { words: ['redo'] },
  what: 'A `redo` line names a day on which the client has no visit.',
  why: 'What was put right is then found on no card, and the work counts as a visit of its own.',
  source: { kind: 'notation' },
  check: (visit, { visits }) => visitsNotFound('redo', visit, visits),
  bad: `
    client wren-abbott "Wren Abbott"
    visit 2026-08-30 wren-abbott
    visit 2026-09-04 wren-abbott
      redo 2026-09-03
           ^^^^^^^^^^`,
  good: `
    client wren-abbott "Wren Abbott"
    visit 2026-08-30 wren-abbott
    visit 2026-09-04 wren-abbott
      redo 2026-08-30`,
});
