import { LONGEST_LINE } from '../../text/span.ts';
import { defineRule } from '../rule.ts';

export default defineRule({
  name: 'line-too-long',
  family: 'reading',
  severity: 'fix',
  bears: 'always',
  over: 'reading',
  what: 'A line is longer than 100,000 characters.',
  why: 'A line this long is no note; it is kept and not read.',
  source: { kind: 'notation' },
  bad: `
    client wren-abbott "Wren Abbott"
      note mask weekly, no iron on the ends until I have seen them again, and so on for pages…
    ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^`,
  good: `
    client wren-abbott "Wren Abbott"
      note mask weekly, no iron on the ends until I have seen them again`,
  badBytes: (text) => new TextEncoder().encode(text.replace('…', 's'.repeat(2 * LONGEST_LINE))),
});
