import { defineRule } from '../rule.ts';

export default defineRule({
  name: 'name-taken',
  family: 'reading',
  severity: 'fix',
  bears: 'always',
  over: 'reading',
  what: 'A name is a unit, a bowl’s letter or a word with a meaning inside lines.',
  why: 'A unit or a word of the notation cannot be a name.',
  source: { kind: 'notation' },
  bad: `
    product lot "Clarifying wash" conditioner
            ^^^`,
  good: `
    product wash "Clarifying wash" conditioner`,
});
