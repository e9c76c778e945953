import { defineRule } from '../rule.ts';

export default defineRule({
  name: 'minutes-differ',
  family: 'time',
  severity: 'fix',
  bears: 'that-day',
  over: 'problem',
  kinds: ['said-minutes'],
  what: 'The minutes typed after `off` are not those between the times.',
  why: 'A time or the count is wrong, and the next visit would go by one of them.',
  source: { kind: 'notation' },
  bad: `
    range neon "Kelp direct" semi
      mix none
      shades teal, coral
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 neon teal
      on 14:30 A
      off 14:50 A 30min
                  ^^^^^`,
  good: `
    range neon "Kelp direct" semi
      mix none
      shades teal, coral
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 neon teal
      on 14:30 A
      off 14:50 A 20min`,
});
