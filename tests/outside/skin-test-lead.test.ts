import { expect, test } from 'vitest';
import { saidIn } from '../rules/compile.ts';

/** A test made at 14:00 and read as the visit begins, in a salon without a policy of its own. */
const visitAt = (time: string): string => `
  product dev-6 "Cream developer" developer 6%
  range cream "Larkfield cream" permanent
    mix 1:1.5
  client wren-abbott "Wren Abbott"
    test skin 2026-09-02 14:00 cream read 2026-09-04 ${time} clear
  visit 2026-09-04 ${time} wren-abbott
    bowl A 20 cream 7/0 + 30 dev-6
    charge roots 40
    paid 40 card`;

test.each([
  [
    '13:59',
    ['fix skin-test-too-soon: cream: the skin test of 2026-09-02 14:00 was made 47 h 59 min before the visit.'],
  ],
  ['14:00', []],
])(
  'a UK trade federation’s page on allergy alert testing, terms of 2021: no less than 48 hours before, so from 14:00 not yet at 13:59 two days on: at %s',
  (time, said) => {
    expect(saidIn(visitAt(time))).toEqual(said);
  },
);
