import { defineRule } from '../rule.ts';

export default defineRule({
  name: 'bad-date',
  family: 'reading',
  severity: 'fix',
  bears: 'always',
  over: 'reading',
  what: 'A date is not of the calendar, or not written year-month-day.',
  why: 'A date is year-month-day, so that 3/4 is never read two ways.',
  source: { kind: 'notation' },
  bad: `
    client wren-abbott "Wren Abbott"
      born 1988-13-02
           ^^^^^^^^^^`,
  good: `
    client wren-abbott "Wren Abbott"
      born 1988-12-02`,
});
