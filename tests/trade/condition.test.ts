import { describe, expect, test } from 'vitest';
import { failedWord, isPorous, weakWord } from '../../src/trade/condition.ts';

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

  test.each([
    'springs back',
    'not gummy',
    'no longer gummy',
    'never breaks',
    'gives a third, comes back',
    'snaps back',
  ])('is not in: %s', (text) => {
    expect(weakWord(text)).toBeUndefined();
  });
});

describe('a test that says the fibre went', () => {
  test.each([
    ...['broke', 'broken', 'breaks', 'it will break', 'breakage at the ends', 'snapped', 'snaps', 'melted', 'mushy'],
    ...['gummy', 'like chewing gum', 'stays stretched', 'stayed stretched', 'stretched and stayed', 'disintegrated'],
    ...['stays-stretched', 'Broke at 15 min', 'fell apart'],
  ])('%s', (text) => {
    expect(failedWord(text)).toBeDefined();
  });

  test.each([
    ['stretched like gum and broke', 'stretched like gum'],
    ['no red left, snapped', 'snapped'],
    ['did not hold and broke', 'broke'],
    ['nothing but mush', 'mush'],
    ['not gummy but broke at the end', 'broke'],
    ['no breaks here; gummy at the nape', 'gummy'],
  ])('%s: %s', (text, word) => {
    expect(failedWord(text)).toBe(word);
  });

  test.each([
    ...['did not break', 'didn’t break', 'no breakage', 'breakage: none', 'not gummy', 'never snapped', 'unbroken'],
    ...['without breaking', 'neither gummy nor broken', 'none broke', 'stretched a third and came back', 'held'],
    ...['snaps back', 'snapped straight back', 'broke the base to orange', 'broke through to gold', 'gum-free'],
    ...['melted into the lengths', 'bubble-gum pink', 'springs back', 'broke last time, held today', ''],
    ...['did not stretch or break', 'hardly any breakage'],
  ])('is not in: %s', (text) => {
    expect(failedWord(text)).toBeUndefined();
  });
});

test('hair that takes up a lot is porous, and medium hair is not', () => {
  expect(['high', 'rough', 'medium', 'low', 'smooth'].map(isPorous)).toEqual([true, true, false, false, false]);
});
