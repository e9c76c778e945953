import { describe, expect, it } from 'vitest';
import {
  ALONG,
  COVERS,
  EYE,
  GROUP_ZONES,
  GROUPS,
  isAlong,
  isCover,
  isGroup,
  isTechnique,
  isZone,
  OFF_SCALP_HAIR,
  TECHNIQUES,
  ZONES,
} from '../../src/trade/zones.ts';

const LISTS = { zone: ZONES, along: ALONG, group: GROUPS, technique: TECHNIQUES, cover: COVERS };

describe('place words', () => {
  it.each([
    [
      'zone',
      'hairline fringe front parting top crown temples sides left right back occipital nape brow lashes beard off-head',
    ],
    ['along', 'roots mids lengths ends'],
    ['group', 't-section half-head full-head all rest'],
    ['technique', 'slice weave fine-weave babylight paint panel block apply comb-through melt'],
    ['cover', 'foil film open'],
  ] as const)('of the list %s are those of the notation', (list, words) => {
    expect(LISTS[list].join(' ')).toBe(words);
  });

  it('are told apart by list', () => {
    const told = (word: string) => [isZone, isAlong, isGroup, isTechnique, isCover].map((is) => is(word));
    for (const word of ZONES) expect(told(word)).toEqual([true, false, false, false, false]);
    for (const word of ALONG) expect(told(word)).toEqual([true, true, false, false, false]);
    for (const word of GROUPS) expect(told(word)).toEqual([true, false, true, false, false]);
    for (const word of TECHNIQUES) expect(told(word)).toEqual([false, false, false, true, false]);
    for (const word of COVERS) expect(told(word)).toEqual([false, false, false, false, true]);
    for (const word of ['', 'elbow', 'valueOf', 'Crown']) expect(told(word)).toEqual(Array(5).fill(false));
  });

  it('make up the groups, but for those that a salon or a line decides', () => {
    expect(GROUP_ZONES['t-section']).toEqual(['parting', 'hairline']);
    expect(GROUP_ZONES['full-head']).toEqual(ZONES.slice(0, 13));
    expect([GROUP_ZONES['half-head'], GROUP_ZONES.all, GROUP_ZONES.rest]).toEqual([undefined, undefined, undefined]);
  });

  it('tell what is beside the eye and what is not hair of the head', () => {
    expect(EYE).toEqual(['brow', 'lashes']);
    expect(OFF_SCALP_HAIR).toEqual(['brow', 'lashes', 'beard', 'off-head']);
  });
});
