import { describe, expect, it } from 'vitest';
import { HEAD_AREA_FACTS, HEAD_AREAS, isHeadArea, SECTION_FACTS, UNCOUNTED_SHARE } from '../../src/trade/head-areas.ts';
import { isTechnique, isZone } from '../../src/trade/zones.ts';

describe('the areas of the head', () => {
  it('make up the whole head', () => {
    expect(HEAD_AREAS.reduce((sum, area) => sum + HEAD_AREA_FACTS[area].percent, 0)).toBe(100);
  });

  it('are zones of the notation, and along the hair is none of them', () => {
    expect(HEAD_AREAS.filter((area) => !isZone(area))).toEqual([]);
    expect(['top', 'roots', 'left', 'beard', 'constructor'].map(isHeadArea)).toEqual([
      true,
      false,
      false,
      false,
      false,
    ]);
  });

  it('have a share for every technique, from least to most', () => {
    const shares = [...Object.values(SECTION_FACTS).map(({ taken }) => taken), ...Object.values(UNCOUNTED_SHARE)];
    expect(shares.filter(({ least, most }) => !(least > 0 && least <= most && most <= 1))).toEqual([]);
    expect(
      [...Object.keys(SECTION_FACTS), ...Object.keys(UNCOUNTED_SHARE)].filter((word) => !isTechnique(word)),
    ).toEqual([]);
  });
});
