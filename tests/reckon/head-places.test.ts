import { describe, expect, it } from 'vitest';
import { type HeadPlace, headPlace, type OwnZones } from '../../src/reckon/head/places.ts';
import { HEAD_AREAS } from '../../src/trade/head-areas.ts';

const NONE: OwnZones = new Map();

const short = ({ areas, half, along, whole, known }: HeadPlace): string =>
  [
    areas.length === HEAD_AREAS.length ? 'every area' : areas.join('+'),
    half ?? '',
    along.join('+'),
    whole ? 'whole' : '',
    known ? '' : 'unknown',
  ]
    .filter((part) => part !== '')
    .join('; ');

const at = (zone: string, own: OwnZones = NONE): string => short(headPlace(zone, own));

describe('headPlace', () => {
  it('finds the area that a zone names, and the side it narrows it to', () => {
    expect(at('top')).toBe('top');
    expect(at('back left')).toBe('back; left');
    expect(at('left temples')).toBe('temples; left');
    expect(at('left')).toBe('temples+sides; left');
  });

  it('keeps places along the hair apart from places on the head', () => {
    expect(at('roots')).toBe('roots; whole');
    expect(at('roots crown')).toBe('crown; roots');
    expect(at('ends top')).toBe('top; ends');
  });

  it('opens groups: the trade’s, all, and a salon’s or a head’s own', () => {
    expect(at('t-section')).toBe('hairline+parting');
    expect(at('all')).toBe('every area; whole');
    expect(at('full-head')).toBe('every area; whole');
    const own: OwnZones = new Map([
      ['half-head', ['top', 'crown', 'sides']],
      ['swirl', ['crown']],
    ]);
    expect(at('half-head', own)).toBe('top+sides+crown');
    expect(at('roots half-head', own)).toBe('top+sides+crown; roots');
    expect(at('swirl', own)).toBe('crown');
  });

  it('narrows one place by another that lies in it, and takes two that share nothing for both', () => {
    expect(at('all crown')).toBe('crown; whole');
    expect(at('t-section hairline')).toBe('hairline');
    expect(at('top crown')).toBe('top+crown');
  });

  it('says when a word of the head’s own has no place', () => {
    expect(at('half-head')).toBe('unknown');
    expect(at('band')).toBe('unknown');
    expect(at('band left')).toBe('left; unknown');
  });

  it('has no area of the scalp for beard, brow and what is off the head', () => {
    expect(['beard', 'brow', 'lashes', 'off-head'].map((zone) => at(zone))).toEqual(['', '', '', '']);
  });

  it('does not go round in a group that holds itself', () => {
    expect(at('halo', new Map([['halo', ['halo', 'top']]]))).toBe('top');
  });
});
