import { defineRule } from '../rule.ts';

export default defineRule({
  name: 'again-unfound',
  family: 'mix',
  severity: 'fix',
  bears: 'never',
  over: 'problem',
  kinds: ['again-missing', 'again-undated'],
  what: 'A bowl to be made again is not found, or the line does not say from which day.',
  why: 'The mix would be guessed from another day.',
  source: { kind: 'notation' },
  bad: `
    range neon "Kelp direct" semi
      mix none
      shades teal, coral
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      again A from 2026-07-10
                   ^^^^^^^^^^`,
  good: `
    range neon "Kelp direct" semi
      mix none
      shades teal, coral
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 neon teal`,
});
