import { describe, expect, test } from 'vitest';
import { cellsOf, displayWidth, withoutControls } from '../../src/text/width.ts';

describe('columns on a screen', () => {
  test.each([
    ['', 0],
    ['clay', 4],
    ['zoë', 3],
    ['zoe\u0308', 3],
    ['½ ~22', 5],
    ['染め', 4],
    ['ｶﾗ', 2],
    ['Ａ', 2],
    ['한', 2],
    ['👩🏽‍🦰', 2],
    ['🇬🇧', 2],
    ['⚠️', 2],
    ['\u200b', 0],
    ['क्षि', 2],
    ['\u{20000}', 2],
  ])('%j fills %i', (text, width) => {
    expect(displayWidth(text)).toBe(width);
  });

  test('a tab reaches the next stop, four columns apart', () => {
    expect(cellsOf('a\tb\t').map(({ width }) => width)).toEqual([1, 3, 1, 3]);
    expect(cellsOf('\t')[0]?.text).toBe('    ');
    expect(cellsOf('日\tb').map(({ width }) => width)).toEqual([2, 2, 1]);
  });

  test('cells keep where they begin in UTF-16 units', () => {
    expect(cellsOf('a👩🏽‍🦰b').map(({ at }) => at)).toEqual([0, 1, 8]);
  });

  test('half of a surrogate pair is one cell and nothing is lost', () => {
    const text = 'a\ud83db';
    const cells = cellsOf(text);
    expect(cells).toHaveLength(3);
    expect(cells.map((cell) => cell.text).join('')).toBe(text);
  });
});

test('control characters are shown and never reach a terminal; a tab stays', () => {
  expect(withoutControls('a\x1b[31mb\x00\x7f\x9b\u202e\tz')).toBe('a␛[31mb␀␡\ufffd\ufffd\tz');
  expect(withoutControls('\u061c\u2066\u2069')).toBe('\ufffd\ufffd\ufffd');
});
