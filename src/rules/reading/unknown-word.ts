import { defineRule } from '../rule.ts';

export default defineRule({
  name: 'unknown-word',
  family: 'reading',
  severity: 'fix',
  bears: 'always',
  over: 'reading',
  what: 'A line begins with a word that the notation does not have.',
  why: 'A line whose first word is unknown is kept as typed and counts for nothing.',
  source: { kind: 'notation' },
  bad: `
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      strat roots 6
      ^^^^^`,
  good: `
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      start roots 6`,
});
