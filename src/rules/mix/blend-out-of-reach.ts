import { defineRule } from '../rule.ts';

export default defineRule({
  name: 'blend-out-of-reach',
  family: 'mix',
  severity: 'fix',
  bears: 'never',
  over: 'problem',
  kinds: ['outside-blend'],
  what: 'Two developers cannot make the strength asked of them.',
  why: 'A blend lies between its two strengths; nothing weaker or stronger comes of it.',
  source: { kind: 'notation' },
  bad: `
    product dev-9 "Cream developer" developer 9%
    product dev-6 "Cream developer" developer 6%
      density 1.01
    product clay "Peregrine clay" lightener
      mix 1:1.5-1:2
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 clay + 10% from dev-6 dev-9 1:2
                       ^^^`,
  good: `
    product dev-9 "Cream developer" developer 9%
    product dev-6 "Cream developer" developer 6%
      density 1.01
    product clay "Peregrine clay" lightener
      mix 1:1.5-1:2
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 clay + 7.5% from dev-6 dev-9 1:2`,
});
