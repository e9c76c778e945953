import { defineRule } from '../rule.ts';

export default defineRule({
  name: 'again-differs',
  family: 'mix',
  severity: 'mind',
  bears: 'never',
  over: 'problem',
  kinds: ['again-differs'],
  what: 'A bowl made again is typed out as well, and the two differ.',
  why: 'One of the two is what was mixed; the card shows the bowl as typed out.',
  source: { kind: 'notation' },
  bad: `
    range neon "Kelp direct" semi
      mix none
      shades teal, coral
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 neon teal
    visit 2026-10-04 wren-abbott
      again A from 2026-09-04
            ^
      bowl A 40 neon teal`,
  good: `
    range neon "Kelp direct" semi
      mix none
      shades teal, coral
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 neon teal
    visit 2026-10-04 wren-abbott
      again A from 2026-09-04`,
});
