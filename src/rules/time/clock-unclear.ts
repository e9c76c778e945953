import { defineRule } from '../rule.ts';

export default defineRule({
  name: 'clock-unclear',
  family: 'time',
  severity: 'fix',
  bears: 'that-day',
  over: 'problem',
  kinds: ['either-half-day', 'outside-hours', 'relative-without-on', 'relative-to-several', 'span-backwards'],
  what: 'A time can be read in two ways, or counts from something that is not said.',
  why: 'A guessed time would move every minute reckoned from it.',
  source: { kind: 'notation' },
  bad: `
    range neon "Kelp direct" semi
      mix none
      shades teal, coral
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 neon teal
      check +10 A
            ^^^`,
  good: `
    range neon "Kelp direct" semi
      mix none
      shades teal, coral
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 neon teal
      on 14:30 A
      check +10 A
      off 14:50 A`,
});
