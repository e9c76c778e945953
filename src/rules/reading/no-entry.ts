import { defineRule } from '../rule.ts';

export default defineRule({
  name: 'no-entry',
  family: 'reading',
  severity: 'fix',
  bears: 'always',
  over: 'reading',
  what: 'Lines stand before the first header of a file.',
  why: 'A line before any header belongs to nobody.',
  source: { kind: 'notation' },
  bad: `
    natural 6
    ^^^^^^^^^
    client wren-abbott "Wren Abbott"`,
  good: `
    client wren-abbott "Wren Abbott"
      natural 6`,
});
