import { defineRule } from '../rule.ts';

export default defineRule({
  name: 'wrong-entry',
  family: 'reading',
  severity: 'fix',
  bears: 'always',
  over: 'reading',
  what: 'A word of the notation stands under a header it does not belong to.',
  why: 'A word under the wrong header would say something about the wrong thing.',
  source: { kind: 'notation' },
  bad: `
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      natural 6
      ^^^^^^^`,
  good: `
    client wren-abbott "Wren Abbott"
      natural 6
    visit 2026-09-04 wren-abbott`,
});
