import { defineRule } from '../rule.ts';

export default defineRule({
  name: 'claim-differs',
  family: 'mix',
  severity: 'fix',
  bears: 'never',
  over: 'problem',
  kinds: ['claim'],
  what: 'The total typed after `=` is not what the parts add up to.',
  why: 'One of the figures was typed or weighed wrongly, and the note cannot tell which.',
  source: { kind: 'notation' },
  bad: `
    product dev-6 "Cream developer" developer 6%
      density 1.01
    product clay "Peregrine clay" lightener
      mix 1:1.5-1:2
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 20vol 1:2 = 130
                                   ^^^`,
  good: `
    product dev-6 "Cream developer" developer 6%
      density 1.01
    product clay "Peregrine clay" lightener
      mix 1:1.5-1:2
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 20vol 1:2 = 120`,
});
