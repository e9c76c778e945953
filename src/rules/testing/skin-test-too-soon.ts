import { defineRule } from '../rule.ts';

export default defineRule({
  name: 'skin-test-too-soon',
  family: 'testing',
  severity: 'stop',
  bears: 'that-day',
  over: 'skin test',
  stands: ['too-soon', 'read-too-soon'],
  what: 'A skin test was made, or read, sooner before or after than the salon’s policy asks.',
  why: 'An allergic reaction can take two days to show, so an early reading can miss it.',
  source: { kind: 'policy', cites: 'its `policy skin-test` line; the maker’s leaflet and the insurer come first' },
  caution: 'skin-test',
  todo: 'Correct a date or time that was typed wrongly; else make the test anew before the next visit, and write why it went on: `because skin-test-too-soon "…"`.',
  bad: `
    salon harbour "Harbour Row"
      hours 9:00-19:00
      policy skin-test 48h every 26w
    product dev-6 "Cream developer" developer 6%
    range cream "Larkfield cream" permanent
      mix 1:1.5
    client wren-abbott "Wren Abbott"
      test skin 2026-09-03 11:00 cream read 2026-09-04 12:00 clear
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
