import { defineRule } from '../rule.ts';

export default defineRule({
  name: 'shade-unknown',
  family: 'mix',
  severity: 'fix',
  bears: 'never',
  over: 'problem',
  kinds: ['unknown-shade', 'shade-of-product'],
  what: 'A shade is not one that the range declares, or stands on a product that has none.',
  why: 'A shade that the range does not have is a slip that the next mix would repeat.',
  source: { kind: 'notation' },
  bad: `
    range neon "Kelp direct" semi
      mix none
      shades teal, coral
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 neon tael
                     ^^^^`,
  good: `
    range neon "Kelp direct" semi
      mix none
      shades teal, coral
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 neon teal`,
});
