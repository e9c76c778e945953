import { describe, expect, it } from 'vitest';
import { DEFAULT_TONE_DIGITS, isTone, OPPOSITES, TONE_FAMILIES, TONE_WORDS, toneFamily } from '../../src/trade/tone.ts';

describe('opposites', () => {
  it('goes both ways', () => {
    for (const [colour, other] of Object.entries(OPPOSITES)) {
      expect(OPPOSITES[other]).toBe(colour);
      expect(other).not.toBe(colour);
    }
  });
});

describe('tone words', () => {
  it('each stand in one family', () => {
    expect(new Set(TONE_WORDS).size).toBe(TONE_WORDS.length);
    for (const [family, words] of Object.entries(TONE_FAMILIES)) {
      for (const word of words) {
        expect(toneFamily(word)).toBe(family);
        expect(isTone(word.toUpperCase())).toBe(true);
      }
    }
    expect(toneFamily('BRASSY')).toBe('orange');
  });

  it.each([
    'ash',
    'violet',
    'gold',
    'copper',
    'mahogany',
    'red',
    'matt',
    'natural',
    'warm',
    'cool',
    'neutral',
    'beige',
    'pearl',
    'brown',
    'brassy',
    'blue',
    'green',
    'orange',
    'yellow',
    'pink',
    'mauve',
    'silver',
  ])('hold %s', (word) => {
    expect(isTone(word)).toBe(true);
  });

  it.each(['grey', 'wavy', '', 'valueOf'])('do not hold "%s"', (word) => {
    expect(isTone(word)).toBe(false);
    expect(toneFamily(word)).toBeUndefined();
  });

  it('are what the default digits mean, and 7 to 9 mean nothing until a range says so', () => {
    expect(Object.keys(DEFAULT_TONE_DIGITS)).toEqual(['0', '1', '2', '3', '4', '5', '6']);
    expect(Object.values(DEFAULT_TONE_DIGITS).every(isTone)).toBe(true);
  });
});
