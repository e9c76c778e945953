import { describe, expect, it } from 'vitest';
import { matchZones } from '../../src/reckon/zone-match.ts';
import { journalOf } from './journal-of.ts';

const { zones } = journalOf(
  `salon harbour
  zone half-head top, crown, sides
  zone front-half half-head, fringe
  zone round round, nape
  zone bare "no places given"
`,
).salon;

const match = (a: string, b: string): string | undefined => {
  const forth = matchZones(a, b, zones);
  expect(matchZones(b, a, zones)).toBe(forth);
  return forth;
};

describe('matchZones', () => {
  it('takes the same words as the same place', () => {
    expect(match('hairline', 'hairline')).toBe('same');
    expect(match('rest', 'rest')).toBe('same');
  });

  it('takes a narrower place as within the wider', () => {
    expect(match('back', 'back left')).toBe('within');
    expect(match('roots', 'roots top')).toBe('within');
    expect(match('back left', 'back right')).toBeUndefined();
    expect(match('roots', 'lengths')).toBeUndefined();
    expect(match('roots top', 'ends top')).toBeUndefined();
  });

  it('takes every place as within `all` and `full-head`', () => {
    expect(match('all', 'ends top')).toBe('within');
    expect(match('full-head', 'nape')).toBe('within');
    expect(match('all', 'full-head')).toBe('within');
    expect(match('roots all', 'roots')).toBe('within');
    expect(match('roots all', 'ends')).toBeUndefined();
  });

  it('takes every place as loosely within `rest`', () => {
    expect(match('rest', 'nape')).toBe('rest');
    expect(match('roots rest', 'roots top')).toBe('rest');
    expect(match('roots rest', 'lengths')).toBeUndefined();
  });

  it('knows the places of the trade’s groups', () => {
    expect(match('t-section', 'parting')).toBe('within');
    expect(match('t-section', 'hairline left')).toBe('within');
    expect(match('roots t-section', 'roots')).toBe('within');
    expect(match('t-section', 'nape')).toBeUndefined();
  });

  it('keeps the groups of two salons apart', () => {
    const other = journalOf('salon quay\n  zone half-head nape\n').salon.zones;
    expect([zones, other, zones].map((own) => matchZones('half-head', 'nape', own))).toEqual([
      undefined,
      'within',
      undefined,
    ]);
  });

  it('knows the salon’s own groups, also one within another', () => {
    expect(match('half-head', 'crown')).toBe('within');
    expect(match('half-head', 'fringe')).toBeUndefined();
    expect(match('front-half', 'crown')).toBe('within');
    expect(match('front-half', 'half-head')).toBe('within');
    expect(match('round', 'nape')).toBe('within');
  });

  it('takes any other word as a place of its own', () => {
    expect(match('band', 'band')).toBe('same');
    expect(match('band', 'bare')).toBeUndefined();
    expect(match('bare', 'bare left')).toBe('within');
    expect(matchZones('half-head', 'crown', new Map())).toBeUndefined();
  });
});
