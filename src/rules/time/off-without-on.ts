import { defineRule } from '../rule.ts';

export default defineRule({
  name: 'off-without-on',
  family: 'time',
  severity: 'fix',
  bears: 'that-day',
  over: 'problem',
  kinds: ['off-without-on'],
  what: 'Something comes off that nothing puts on.',
  why: 'The time on the hair is the half of the formula that is missing.',
  source: { kind: 'notation' },
  bad: `
    range neon "Kelp direct" semi
      mix none
      shades teal, coral
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 neon teal
      off 14:50 A
          ^^^^^`,
  good: `
    range neon "Kelp direct" semi
      mix none
      shades teal, coral
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 neon teal
      on 14:30 A
      off 14:50 A`,
});
