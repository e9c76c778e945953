import { defineRule } from '../rule.ts';

export default defineRule({
  name: 'header-shape',
  family: 'reading',
  severity: 'fix',
  bears: 'always',
  over: 'reading',
  what: 'A line begins with a header’s word and does not go on as one, or a header lacks what it needs.',
  why: 'A header without what it needs cannot be filed.',
  source: { kind: 'notation' },
  bad: `
    client wren-abbott "Wren Abbott"
      natural 6
    product build-up at nape
    ^^^^^^^`,
  good: `
    client wren-abbott "Wren Abbott"
      natural 6
      note product build-up at nape`,
});
