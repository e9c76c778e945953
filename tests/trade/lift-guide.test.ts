import { expect, test } from 'vitest';
import { exact } from '../../src/text/exact.ts';
import { guideLift } from '../../src/trade/lift-guide.ts';

test.each([
  [exact(19, 10), 0, 0],
  [exact(3), 0, 0],
  [exact(4), 1, 2],
  [exact(6), 1, 2],
  [exact(15, 2), 2, 3],
  [exact(12), 3, 4],
])('a strength takes its own row or the next stronger one: %j', (percent, low, high) => {
  expect(guideLift(percent)).toMatchObject({ low, high });
});

test('nothing is guided above the last row', () => {
  expect(guideLift(exact(121, 10))).toBeUndefined();
});
