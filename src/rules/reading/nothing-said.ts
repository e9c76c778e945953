import { defineRule } from '../rule.ts';

export default defineRule({
  name: 'nothing-said',
  family: 'reading',
  severity: 'fix',
  bears: 'always',
  over: 'reading',
  what: 'A line holds its first word and nothing that it needs.',
  why: 'A word alone says nothing yet.',
  source: { kind: 'notation' },
  bad: `
    client wren-abbott "Wren Abbott"
      born
    ^^^^^^`,
  good: `
    client wren-abbott "Wren Abbott"
      born 1988-04-02`,
});
