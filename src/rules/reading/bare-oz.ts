import { defineRule } from '../rule.ts';

export default defineRule({
  name: 'bare-oz',
  family: 'reading',
  severity: 'fix',
  bears: 'always',
  over: 'reading',
  what: 'An amount is in plain ounces.',
  why: 'An ounce is four different amounts.',
  source: { kind: 'notation' },
  bad: `
    product wash "Clarifying wash" conditioner
      pack 16 oz 9.00
              ^^`,
  good: `
    product wash "Clarifying wash" conditioner
      pack 16 floz-uk 9.00`,
});
