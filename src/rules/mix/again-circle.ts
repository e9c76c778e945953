import { defineRule } from '../rule.ts';

export default defineRule({
  name: 'again-circle',
  family: 'mix',
  severity: 'stop',
  bears: 'never',
  over: 'problem',
  kinds: ['again-circle'],
  what: 'Bowls are made again from one another in a circle.',
  why: 'Nothing in the circle says what was weighed.',
  source: { kind: 'notation' },
  bad: `
    range neon "Kelp direct" semi
      mix none
      shades teal, coral
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      again A from b1
      again b1 from A
            ^^`,
  good: `
    range neon "Kelp direct" semi
      mix none
      shades teal, coral
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 neon teal
      again b1 from A`,
});
