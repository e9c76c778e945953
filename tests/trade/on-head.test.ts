import { expect, test } from 'vitest';
import { exact } from '../../src/text/exact.ts';
import { readyAtRatio, USUAL_READY } from '../../src/trade/on-head.ts';

test.each([
  [6, exact(1), exact(3)],
  [6, exact(3, 2), exact(18, 5)],
  [6, exact(3), exact(9, 2)],
  [12, exact(2), USUAL_READY.high],
  [9, exact(0), exact(0)],
])('%d %% at 1 to %j is %j on the head', (percent, ratio, ready) => {
  expect(readyAtRatio(exact(percent), ratio)).toEqual(ready);
});
