import { expect, test } from 'vitest';
import { pairs } from '../../src/text/pairs.ts';

test('values stand side by side as far as the shorter list goes', () => {
  expect(pairs([1, 2], ['a', 'b'])).toEqual([
    [1, 'a'],
    [2, 'b'],
  ]);
  expect(pairs([1, 2], ['a'])).toEqual([[1, 'a']]);
  expect(pairs([1], ['a', 'b'])).toEqual([[1, 'a']]);
  expect(pairs([], ['a'])).toEqual([]);
});
