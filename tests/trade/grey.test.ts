import { expect, test } from 'vitest';
import { exact } from '../../src/text/exact.ts';
import { greyBases, naturalShare } from '../../src/trade/grey.ts';

const shares = (percent: number) => greyBases(percent).map(naturalShare);

test.each([
  [0, []],
  [24.9, []],
  [25, [exact(1, 4)]],
  [40, [exact(1, 4), exact(1, 2)]],
  [69, [exact(1, 2)]],
  [70, [exact(1, 2), exact(3, 4)]],
  [100, [exact(3, 4)]],
])('at %d %% grey the natural series is %j of the colour', (percent, expected) => {
  expect(shares(percent)).toEqual(expected);
});
