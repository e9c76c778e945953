import { defineRule } from '../rule.ts';

export default defineRule({
  name: 'open-quote',
  family: 'reading',
  severity: 'fix',
  bears: 'always',
  over: 'reading',
  what: 'A quotation mark has no partner on its line.',
  why: 'A quotation without an end swallows the rest of its line.',
  source: { kind: 'notation' },
  bad: `
    client wren-abbott "Wren Abbott"
      allergy "nickel
              ^`,
  good: `
    client wren-abbott "Wren Abbott"
      allergy "nickel"`,
});
