import { defineRule } from '../rule.ts';

export default defineRule({
  name: 'not-utf-8',
  family: 'reading',
  severity: 'fix',
  bears: 'always',
  over: 'reading',
  what: 'A file of notes is not saved as UTF-8.',
  why: 'Letters outside English may show wrongly until the file is saved as UTF-8.',
  source: { kind: 'notation' },
  bad: `
    client zoe-harrow "Zoë Harrow"
                         ^
      natural 6`,
  good: `
    client zoe-harrow "Zoë Harrow"
      natural 6`,
  badBytes: (text) => Uint8Array.from(text, (letter) => letter.charCodeAt(0)),
});
