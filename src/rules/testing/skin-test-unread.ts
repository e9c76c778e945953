import { defineRule } from '../rule.ts';

export default defineRule({
  name: 'skin-test-unread',
  family: 'testing',
  severity: 'stop',
  bears: 'that-day',
  over: 'skin test',
  stands: ['unread'],
  what: 'Oxidative colour was put on, and its skin test has no result by then.',
  why: 'A test that nobody read warns nobody.',
  source: { kind: 'policy', cites: 'its `policy skin-test` line; the maker’s leaflet and the insurer come first' },
  caution: 'skin-test',
  todo: 'Write the reading, as in `test skin read 2026-09-03 11:30 clear`.',
  bad: `
    salon harbour "Harbour Row"
      hours 9:00-19:00
      policy skin-test 48h every 26w
    product dev-6 "Cream developer" developer 6%
    range cream "Larkfield cream" permanent
      mix 1:1.5
    client wren-abbott "Wren Abbott"
      test skin 2026-09-01 11:00 cream
    visit 2026-09-04 14:00 wren-abbott
      bowl A 20 cream 7/0 + 30 dev-6
             ^^^^^^^^^^^^`,
  good: `
    salon harbour "Harbour Row"
      hours 9:00-19:00
      policy skin-test 48h every 26w
    product dev-6 "Cream developer" developer 6%
    range cream "Larkfield cream" permanent
      mix 1:1.5
    client wren-abbott "Wren Abbott"
      test skin 2026-09-01 11:00 cream read 2026-09-03 11:30 clear
    visit 2026-09-04 14:00 wren-abbott
      bowl A 20 cream 7/0 + 30 dev-6`,
});
