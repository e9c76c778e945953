import { defineRule } from '../rule.ts';

export default defineRule({
  name: 'skin-test-expired',
  family: 'testing',
  severity: 'stop',
  bears: 'that-day',
  over: 'skin test',
  stands: ['expired', 'void'],
  what: 'A skin test is older than the salon’s policy lets it hold, or void since a reaction.',
  why: 'An allergy can be gained between two visits, so a clear test does not hold for ever.',
  source: { kind: 'policy', cites: 'its `policy skin-test` line; the maker’s leaflet and the insurer come first' },
  caution: 'skin-test',
  todo: 'Write the newer test; with none, make one before the next visit, and write why it went on: `because skin-test-expired "…"`.',
  bad: `
    salon harbour "Harbour Row"
      hours 9:00-19:00
      policy skin-test 48h every 26w
    product dev-6 "Cream developer" developer 6%
    range cream "Larkfield cream" permanent
      mix 1:1.5
    client wren-abbott "Wren Abbott"
      test skin 2025-09-01 11:00 cream read 2025-09-03 11:30 clear
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
