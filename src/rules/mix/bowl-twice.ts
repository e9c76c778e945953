import { defineRule } from '../rule.ts';

export default defineRule({
  name: 'bowl-twice',
  family: 'mix',
  severity: 'fix',
  bears: 'never',
  over: 'problem',
  kinds: ['bowl-twice'],
  what: 'Two `bowl` lines of one visit give a bowl the same name.',
  why: 'Times, places and what is left are said of a name, so two bowls of one name cannot be told apart.',
  source: { kind: 'notation' },
  bad: `
    range neon "Kelp direct" semi
      mix none
      shades teal, coral
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 neon teal
      bowl A 20 neon coral
           ^`,
  good: `
    range neon "Kelp direct" semi
      mix none
      shades teal, coral
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 neon teal
      bowl B 20 neon coral`,
});
