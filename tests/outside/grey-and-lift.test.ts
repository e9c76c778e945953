import { expect, test } from 'vitest';
import { add, div, exact } from '../../src/text/exact.ts';
import { GREY_BASES, greyBases, naturalShare } from '../../src/trade/grey.ts';
import { guideLift } from '../../src/trade/lift-guide.ts';

test.each([
  [30, [[3, 1]]],
  [50, [[1, 1]]],
  [80, [[1, 3]]],
  [
    40,
    [
      [3, 1],
      [1, 1],
    ],
  ],
  [
    70,
    [
      [1, 1],
      [1, 3],
    ],
  ],
])('"Swatch smarts", US trade magazine, 2011: %d %% grey takes target and natural %j', (percent, parts) => {
  expect(greyBases(percent).map(({ target, natural }) => [target, natural])).toEqual(parts);
});

test('"Swatch smarts", 2011: 1/4 oz and 1/4 oz of colour with 3/4 oz of developer is 1:1.5, half of it natural', () => {
  const colour = add(exact(1, 4), exact(1, 4));
  expect(div(exact(3, 4), colour)).toEqual(exact(3, 2));
  expect(GREY_BASES.filter((row) => naturalShare(row).d === 2)).toHaveLength(1);
});

test('cosmetology exam guide, "Hair coloring and lightening": 10, 20, 30, 40 volumes', () => {
  expect([3, 6, 9, 12].map((percent) => guideLift(exact(percent))).map((row) => [row?.low, row?.high])).toEqual([
    [0, 0],
    [1, 2],
    [2, 3],
    [3, 4],
  ]);
});
