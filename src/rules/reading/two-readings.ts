import { defineRule } from '../rule.ts';

export default defineRule({
  name: 'two-readings',
  family: 'reading',
  severity: 'fix',
  bears: 'always',
  over: 'reading',
  what: 'A figure can be read in two ways.',
  why: 'A figure that can be read two ways is asked about, never guessed.',
  source: { kind: 'notation' },
  bad: `
    product wash "Clarifying wash" conditioner
      pack 1.000 ml 9.00
           ^^^^^`,
  good: `
    product wash "Clarifying wash" conditioner
      pack 1000 ml 9.00`,
});
