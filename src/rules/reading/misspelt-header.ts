import { defineRule } from '../rule.ts';

export default defineRule({
  name: 'misspelt-header',
  family: 'reading',
  severity: 'fix',
  bears: 'always',
  over: 'reading',
  what: 'A first word is near to a header, and the rest of the line has that header’s shape.',
  why: 'Lines under a header that cannot be read must not fall to the client above.',
  source: { kind: 'notation' },
  bad: `
    client wren-abbott "Wren Abbott"
    vist 2026-09-04 wren-abbott
    ^^^^
      start roots 6`,
  good: `
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      start roots 6`,
});
