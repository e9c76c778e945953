import { defineRule } from '../rule.ts';

export default defineRule({
  name: 'caution-to',
  family: 'reading',
  severity: 'mind',
  bears: 'always',
  over: 'reading',
  what: 'A caution ends with `to` and a date.',
  why: 'A caution ends only with `until`, lest a month in its text end it by mistake.',
  source: { kind: 'notation' },
  bad: `
    client wren-abbott "Wren Abbott"
      caution pregnant to 2027-01
                       ^^^^^^^^^^`,
  good: `
    client wren-abbott "Wren Abbott"
      caution pregnant until 2027-01`,
});
