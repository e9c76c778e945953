import { defineRule } from '../rule.ts';
import { nearClients } from '../unknown-names.ts';

export default defineRule({
  name: 'skin-test-missing',
  family: 'testing',
  severity: 'stop',
  bears: 'that-day',
  over: 'skin test',
  stands: ['missing'],
  what: 'Oxidative colour was put on, and no skin test of it is noted.',
  why: 'Hair dye can cause a severe allergic reaction; the test is the warning before it, and the proof afterwards.',
  source: { kind: 'policy', cites: 'its `policy skin-test` line; the maker’s leaflet and the insurer come first' },
  caution: 'skin-test',
  todo: 'with none, make one before the next visit, and write why it went on: `because skin-test-missing "…"`.',
  // Under a slip of the client's name the tests of the right one are not found: that slip is the finding.
  unless: ({ client }, { journal }) => nearClients(client, journal).length > 0,
  bad: `
    salon harbour "Harbour Row"
      hours 9:00-19:00
      policy skin-test 48h every 26w
    product dev-6 "Cream developer" developer 6%
    range cream "Larkfield cream" permanent
      mix 1:1.5
    client wren-abbott "Wren Abbott"
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
