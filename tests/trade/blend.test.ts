import { describe, expect, test } from 'vitest';
import { exact } from '../../src/text/exact.ts';
import { blendShades, toneWords } from '../../src/trade/blend.ts';

describe('blendShades', () => {
  test('the depth is the mean by weight, and clear moves nothing', () => {
    const { depth } = blendShades([
      { weight: exact(20), depth: 5, tones: [] },
      { weight: exact(10), depth: 6.5, tones: [] },
      { weight: exact(90), depth: undefined, tones: [] },
    ]);
    expect(depth).toEqual(exact(11, 2));
  });

  test('a first tone counts twice a second one, by weight, and the largest stands first', () => {
    const { tones } = blendShades([
      { weight: exact(10), depth: 8, tones: ['ash', 'violet'] },
      { weight: exact(15), depth: 8, tones: ['gold'] },
      { weight: exact(15), depth: 8, tones: ['gold', 'gold', 'no-tone'] },
    ]);
    expect(tones).toEqual([
      { family: 'yellow', share: exact(75, 105) },
      { family: 'blue', share: exact(20, 105) },
      { family: 'violet', share: exact(10, 105) },
    ]);
  });

  test('nothing, and nothing with a depth or tone, come to nothing', () => {
    const nothing = { depth: undefined, tones: [] };
    expect(blendShades([])).toEqual(nothing);
    expect(blendShades([{ weight: exact(10), depth: undefined, tones: ['shiny'] }])).toEqual(nothing);
  });
});

describe('toneWords', () => {
  test.each([
    ['43', [], ['copper', 'gold']],
    ['09', [], ['natural']],
    ['', [], []],
    ['41', [['4', 'beige']], ['beige']],
    [
      'NVV',
      [
        ['N', 'natural'],
        ['VV', 'violet'],
        ['V', 'mauve'],
      ],
      ['natural', 'violet'],
    ],
    [
      'V',
      [
        ['VV', 'violet'],
        ['V', 'mauve'],
      ],
      ['mauve'],
    ],
  ] as const)('%s with %j', (signs, declared, words) => {
    expect(toneWords(signs, new Map(declared.map(([sign, tone]) => [sign, tone])))).toEqual(words);
  });
});
