import { defineRule } from '../rule.ts';

export default defineRule({
  name: 'check-before-on',
  family: 'time',
  severity: 'fix',
  bears: 'that-day',
  over: 'problem',
  kinds: ['check-before-on'],
  what: 'A check stands before what it looks at went on.',
  why: 'The course of the colour cannot be read off the card.',
  source: { kind: 'notation' },
  bad: `
    range neon "Kelp direct" semi
      mix none
      shades teal, coral
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 neon teal
      on 14:30 A
      check 14:10 A
            ^^^^^
      off 14:50 A`,
  good: `
    range neon "Kelp direct" semi
      mix none
      shades teal, coral
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 neon teal
      on 14:30 A
      check 14:40 A
      off 14:50 A`,
});
