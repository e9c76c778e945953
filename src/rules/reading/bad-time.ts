import { defineRule } from '../rule.ts';

export default defineRule({
  name: 'bad-time',
  family: 'reading',
  severity: 'fix',
  bears: 'always',
  over: 'reading',
  what: 'A time is no time of day, or stands where none can be read.',
  why: 'A time that is no time of day cannot be reckoned with.',
  source: { kind: 'notation' },
  bad: `
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      rinse 25:10
            ^^^^^`,
  good: `
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      rinse 15:10`,
});
