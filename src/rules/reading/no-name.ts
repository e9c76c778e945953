import { defineRule } from '../rule.ts';

export default defineRule({
  name: 'no-name',
  family: 'reading',
  severity: 'fix',
  bears: 'always',
  over: 'reading',
  what: 'An amount in a mix has no name beside it.',
  why: 'An amount of nothing cannot be reckoned.',
  source: { kind: 'notation' },
  bad: `
    range neon "Kelp direct" semi
      mix none
      shades teal
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 neon teal 5
                          ^`,
  good: `
    range neon "Kelp direct" semi
      mix none
      shades teal
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 neon teal`,
});
