import { defineRule } from '../rule.ts';

export default defineRule({
  name: 'nul-byte',
  family: 'reading',
  severity: 'fix',
  bears: 'always',
  over: 'reading',
  what: 'A line holds a NUL byte.',
  why: 'A NUL byte is a sign of a damaged file; the line is kept and not read.',
  source: { kind: 'notation' },
  bad: `
    client wren-abbott "Wren Abbott"
      note tin half full␀
                        ^`,
  good: `
    client wren-abbott "Wren Abbott"
      note tin half full`,
  badBytes: (text) => new TextEncoder().encode(text.replace('␀', '\0')),
});
