import { defineRule } from '../rule.ts';

export default defineRule({
  name: 'bowl-disagrees',
  family: 'mix',
  severity: 'fix',
  bears: 'never',
  over: 'problem',
  kinds: ['disagree'],
  what: 'Two facts about a bowl cannot both hold.',
  why: 'A bowl whose figures disagree cannot be made again as it was.',
  source: { kind: 'notation' },
  bad: `
    product dev-6 "Cream developer" developer 6%
      density 1.01
    product clay "Peregrine clay" lightener
      mix 1:1.5-1:2
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-6 1:1.5
                                ^^^^^`,
  good: `
    product dev-6 "Cream developer" developer 6%
      density 1.01
    product clay "Peregrine clay" lightener
      mix 1:1.5-1:2
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-6`,
});
