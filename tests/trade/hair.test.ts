import { describe, expect, it } from 'vitest';
import {
  HAIR_QUALITIES,
  historyFacts,
  isAdverse,
  isHairWord,
  isHistory,
  isTestKind,
  TEST_KINDS,
  TEST_RESULTS,
} from '../../src/trade/hair.ts';

describe('history', () => {
  it.each([
    ['box-colour', true, false, false, false],
    ['salon-colour', true, false, false, false],
    ['lightener', false, true, false, false],
    ['henna', true, false, true, false],
    ['metallic', true, false, true, false],
    ['direct-dye', true, false, false, false],
    ['perm', false, false, false, true],
    ['relaxer', false, false, false, true],
    ['smoothing', false, false, false, true],
    ['none', false, false, false, false],
  ] as const)('of %s', (word, coloured, lightened, metal, restructured) => {
    expect(historyFacts(word)).toStrictEqual({ coloured, lightened, metal, restructured });
  });

  it('words are those of the notation', () => {
    expect(
      'box-colour salon-colour lightener henna metallic direct-dye perm relaxer smoothing none'
        .split(' ')
        .every(isHistory),
    ).toBe(true);
    expect(['bleach', '', 'valueOf'].some(isHistory)).toBe(false);
  });
});

describe('hair words', () => {
  it('run from least to most', () => {
    expect(HAIR_QUALITIES).toStrictEqual({
      strand: ['fine', 'medium', 'coarse'],
      density: ['low', 'medium', 'high'],
      porosity: ['low', 'medium', 'high'],
      length: ['crop', 'short', 'chin', 'shoulder', 'mid-back', 'waist', 'long'],
      form: ['straight', 'wavy', 'curly', 'coily'],
    });
  });

  it('belong to their quality', () => {
    expect(isHairWord('strand', 'coarse')).toBe(true);
    expect(isHairWord('strand', 'curly')).toBe(false);
    expect(isHairWord('form', 'curly')).toBe(true);
  });
});

describe('tests', () => {
  it('have their kinds, and result words for each', () => {
    expect(TEST_KINDS).toEqual(['skin', 'strand', 'metal', 'stretch', 'porosity']);
    expect([...TEST_KINDS, 'patch', 'valueOf'].map(isTestKind)).toEqual([true, true, true, true, true, false, false]);
    expect(TEST_RESULTS).toStrictEqual({
      skin: ['clear', 'reaction'],
      strand: ['clear', 'reaction', 'gummy', 'breaks'],
      metal: ['clear', 'reaction', 'bubbles', 'heat', 'colour-change'],
      stretch: ['clear', 'reaction', 'springs-back', 'stays-stretched', 'breaks'],
      porosity: ['clear', 'reaction', 'smooth', 'rough', 'uneven'],
    });
  });

  it('speak against going on with some of their results', () => {
    const words = [...new Set(Object.values(TEST_RESULTS).flat())];
    expect(words.filter(isAdverse)).toEqual([
      'reaction',
      'gummy',
      'breaks',
      'bubbles',
      'heat',
      'colour-change',
      'stays-stretched',
    ]);
    expect(isAdverse('yellow')).toBe(false);
  });
});
