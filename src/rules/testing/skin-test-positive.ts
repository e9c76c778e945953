import { defineRule } from '../rule.ts';

export default defineRule({
  name: 'skin-test-positive',
  family: 'testing',
  severity: 'stop',
  bears: 'that-day',
  over: 'skin test',
  stands: ['positive'],
  what: 'Oxidative colour was put on after a skin test that showed a reaction.',
  why: 'After a positive test every further contact can be worse than the last.',
  source: {
    kind: 'published',
    cites: 'Regulation (EC) 1223/2009, Annex III, label warnings of the oxidative hair dyes',
  },
  caution: 'reaction',
  todo: 'Correct the result if it was typed wrongly; no further colour until the cause is known.',
  bad: `
    salon harbour "Harbour Row"
      hours 9:00-19:00
      policy skin-test 48h every 26w
    product dev-6 "Cream developer" developer 6%
    range cream "Larkfield cream" permanent
      mix 1:1.5
    client wren-abbott "Wren Abbott"
      test skin 2026-09-01 11:00 cream read 2026-09-03 11:30 reaction
    visit 2026-09-04 14:00 wren-abbott
      bowl A 20 cream 7/0 + 30 dev-6
             ^^^^^^^^^^^^`,
  good: `
    salon harbour "Harbour Row"
      hours 9:00-19:00
      policy skin-test 48h every 26w
    product dev-6 "Cream developer" developer 6%
    range cream "Larkfield cream" permanent
      mix 1:1.5
    client wren-abbott "Wren Abbott"
      test skin 2026-09-01 11:00 cream read 2026-09-03 11:30 clear
    visit 2026-09-04 14:00 wren-abbott
      bowl A 20 cream 7/0 + 30 dev-6`,
});
