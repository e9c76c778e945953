import { describe, expect, test } from 'vitest';
import { isPorous, weakWord } from '../../src/trade/condition.ts';

describe('weak hair in a remark', () => {
  test.each([
    ['ends gummy on the strand', 'gummy'],
    ['Ends stretch and stay, a bit', 'stretch and stay'],
    ['stays stretched', 'stays stretched'],
    ['it snaps when wet', 'snaps'],
    ['BREAKS at the crown', 'breaks'],
  ])('%s', (text, word) => {
    expect(weakWord(text)).toBe(word);
  });

  test.each(['springs back', 'not gummy', 'no longer gummy', 'never breaks', 'gives a third, comes back'])(
    'is not in: %s',
    (text) => {
      expect(weakWord(text)).toBeUndefined();
    },
  );
});

test('hair that takes up a lot is porous, and medium hair is not', () => {
  expect(['high', 'rough', 'medium', 'low', 'smooth'].map(isPorous)).toEqual([true, true, false, false, false]);
});
