import { defineRule } from '../rule.ts';

export default defineRule({
  name: 'not-read',
  family: 'reading',
  severity: 'fix',
  bears: 'always',
  over: 'reading',
  what: 'Part of a line says nothing that the line can take.',
  why: 'What is not read is not reckoned with.',
  source: { kind: 'notation' },
  bad: `
    salon harbour "Harbour Row"
      scale 1 g digital
                ^^^^^^^`,
  good: `
    salon harbour "Harbour Row"
      scale 1 g "digital"`,
});
