import { defineRule } from '../rule.ts';

export default defineRule({
  name: 'off-before-on',
  family: 'time',
  severity: 'fix',
  bears: 'that-day',
  over: 'problem',
  kinds: ['off-before-on'],
  what: 'Something comes off before it went on.',
  why: 'The time on the hair cannot be reckoned.',
  source: { kind: 'notation' },
  bad: `
    range neon "Kelp direct" semi
      mix none
      shades teal, coral
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 neon teal
      on 15:30 A
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
