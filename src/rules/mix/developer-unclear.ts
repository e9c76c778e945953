import { defineRule } from '../rule.ts';

export default defineRule({
  name: 'developer-unclear',
  family: 'mix',
  severity: 'fix',
  bears: 'never',
  over: 'problem',
  kinds: ['no-developer', 'several-developers'],
  what: 'A strength alone fits no developer on the shelf, or several.',
  why: 'Strength, weight and cost follow the developer, so the note has to say which.',
  source: { kind: 'notation' },
  bad: `
    product dev-6 "Cream developer" developer 6%
      density 1.01
    product clay "Peregrine clay" lightener
      mix 1:1.5-1:2
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 clay + 30vol 1:2
                       ^^^^^`,
  good: `
    product dev-6 "Cream developer" developer 6%
      density 1.01
    product clay "Peregrine clay" lightener
      mix 1:1.5-1:2
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 clay + 20vol 1:2`,
});
