import { describe, expect, it } from 'vitest';
import { testsFor } from '../../src/reckon/testing/tests.ts';
import { journalOf } from './journal-of.ts';

const resultOf = (kind: string, words: string): string | undefined => {
  const client = journalOf(
    `client wren-abbott\ntest ${kind} 2026-09-01 11:00 cream read 2026-09-03 11:30 ${words}`,
  ).clients.get('wren-abbott');
  return client && testsFor(client, undefined)[0]?.result;
};

describe('a skin test', () => {
  it.each(['clear', 'Clear.', 'clear?', '~clear', 'negative', 'no reaction', 'clear, no reaction', 'clear - negative'])(
    'is clear by `%s`',
    (words) => expect(resultOf('skin', words)).toBe('clear'),
  );

  it.each(['reaction', 'positive?', 'not clear', 'reaction, red', 'clear then reaction', 'no reaction, then reaction'])(
    'shows a reaction by `%s`',
    (words) => expect(resultOf('skin', words)).toBe('adverse'),
  );

  it.each([
    ...['red', 'itching', 'slight redness', 'fine', 'ok', 'passed', 'clear, slightly pink', 'clear (slightly pink)'],
    ...['red and itchy', 'no redness', 'not a reaction', 'no visible reaction', 'clear 5', 'clear red', 'heat'],
    ...['never clear and not itchy', 'nothing'],
  ])('is not settled by `%s`', (words) => expect(resultOf('skin', words)).toMatch(/other|adverse/));

  it.each([
    'red',
    'fine',
    'ok',
    'clear, slightly pink',
    'clear (slightly pink)',
    'no redness',
    'not a reaction',
    'clear 5',
    'clear, nothing',
  ])('is neither clear nor a reaction by `%s`', (words) => expect(resultOf('skin', words)).toBe('other'));

  it('keeps words in quotation marks as a remark', () => {
    expect(resultOf('skin', 'clear "slightly pink"')).toBe('clear');
    expect(resultOf('skin', 'reaction "red and itchy"')).toBe('adverse');
  });
});

describe('a test of the hair', () => {
  it.each([
    ['no reaction', 'clear'],
    ['not clear', 'adverse'],
    ['clear and shiny', 'clear'],
    ['gummy', 'adverse'],
    ['not gummy', 'other'],
    ['no sign of reaction', 'other'],
    ['red snaps', 'adverse'],
    ['stretched like gum', 'adverse'],
    ['did not break', 'other'],
    ['red "broke at the end"', 'adverse'],
    ['"broke at the end"', 'adverse'],
    ['yellow "did not break"', 'other'],
    ['clear "snaps back"', 'clear'],
  ])('%s: %s', (words, result) => expect(resultOf('strand', words)).toBe(result));
});
