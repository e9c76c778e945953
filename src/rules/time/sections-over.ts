import { defineRule } from '../rule.ts';

export default defineRule({
  name: 'sections-over',
  family: 'time',
  severity: 'fix',
  bears: 'never',
  over: 'problem',
  kinds: ['sections-over'],
  what: 'More sections came off than were placed.',
  why: 'One of the counts is wrong, and next time that many would be laid.',
  source: { kind: 'notation' },
  bad: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-6
      place A nape weave x12 off-scalp 1cm foil
      on 14:30 A nape
      check 14:40 A nape orange
      off 14:50 A nape x6
      off 15:00 A nape x8
          ^^^^^`,
  good: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-6
      place A nape weave x12 off-scalp 1cm foil
      on 14:30 A nape
      check 14:40 A nape orange
      off 14:50 A nape x6
      off 15:00 A nape x6`,
});
