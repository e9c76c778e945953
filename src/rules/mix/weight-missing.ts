import { defineRule } from '../rule.ts';

export default defineRule({
  name: 'weight-missing',
  family: 'mix',
  severity: 'fix',
  bears: 'never',
  over: 'problem',
  kinds: ['missing-weight'],
  what: 'One weight too few is known for a bowl to be worked out.',
  why: 'Without it the bowl cannot be made again, nor its cost and stock be reckoned.',
  source: { kind: 'notation' },
  bad: `
    product dev-6 "Cream developer" developer 6%
      density 1.01
    product clay "Peregrine clay" lightener
      mix 1:1.5-1:2
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A clay + dev-6 1:2
           ^^^^^^^^^^^^^^^^^^`,
  good: `
    product dev-6 "Cream developer" developer 6%
      density 1.01
    product clay "Peregrine clay" lightener
      mix 1:1.5-1:2
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 clay + dev-6 1:2`,
});
