import { defineRule } from '../rule.ts';

export default defineRule({
  name: 'no-off',
  family: 'time',
  severity: 'fix',
  bears: 'that-day',
  over: 'problem',
  kinds: ['no-off'],
  what: 'Something went on, and nothing says when it came off.',
  why: 'The time on the hair is the half of the formula that is missing.',
  source: { kind: 'notation' },
  // Today's bowl may still be on the hair.
  unless: (visit, { on }) => visit.date === on,
  bad: `
    range neon "Kelp direct" semi
      mix none
      shades teal, coral
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 neon teal
      on 14:30 A
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
