import { expect, test } from 'vitest';
import { stamp } from '../../src/cli/stamp.ts';

test.each([
  ['on A top', 'on 14:40 A top'],
  ['check A hairline gold', 'check 14:40 A hairline gold'],
  ['  Off A ', 'Off 14:40 A'],
  ['heat 10min', 'heat 14:40 10min'],
  ['wash 15 clarify', 'wash 14:40 15 clarify'],
  ['rinse', 'rinse 14:40'],
  ['dry', 'dry 14:40'],
  ['cut "2 cm"', 'cut 14:40 "2 cm"'],
  ['reaction A nape itching', 'reaction 14:40 A nape itching'],
  ['stopped A "rinsed at once"', 'stopped 14:40 A "rinsed at once"'],
])('%j is stamped', (typed, stamped) => {
  expect(stamp(typed, 14 * 60 + 40)).toBe(stamped);
});

test.each([
  'on 14:35-14:55 A',
  'check +10 A orange',
  'off 2.38pm A',
  'left A 12 binned',
  'result roots 6',
  'note at the chair',
])('%j stands as it is', (typed) => {
  expect(stamp(typed, 0)).toBe(typed);
});
