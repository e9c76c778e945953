import { describe, expect, it } from 'vitest';
import { compare, exact, ZERO } from '../../src/text/exact.ts';
import { isLaw, LAW, LIMIT_READY_FOR_USE } from '../../src/trade/law.ts';

describe('law', () => {
  it('is named as a policy line names it', () => {
    expect(isLaw('eu')).toBe(true);
    expect(['us', '', 'valueOf'].some(isLaw)).toBe(false);
  });

  it('names an entry and a standing for every limit, and no limit is met twice', () => {
    for (const entry of LAW.eu.limits) {
      expect(entry.source).toMatch(/^Regulation \(EC\) 1223\/2009, Annex III.*entry \d+/);
      expect(entry.reckonedAs).not.toBe('');
      expect(compare(entry.percent, ZERO)).toBe(1);
      expect(['published', 'second-hand', 'from memory']).toContain(entry.standing);
    }
    const keys = LAW.eu.limits.map((entry) => [entry.substance, entry.use, entry.reckonedAs].join());
    expect(new Set(keys).size).toBe(20);
  });

  it('says what was not read in the law itself', () => {
    const doubtful = LAW.eu.limits.filter((entry) => entry.standing !== 'published');
    expect(doubtful.map((entry) => [entry.substance, entry.standing])).toEqual([
      ['p-phenylenediamine', 'second-hand'],
      ['1-naphthol', 'from memory'],
    ]);
  });

  it('keeps the limit on hair apart from those on skin and nails', () => {
    expect(LAW.eu.peroxide).toBe(LAW.eu.limits.find(({ substance }) => substance === 'hydrogen peroxide'));
    expect(LAW.eu.peroxide.use).toBe('hair');
    expect(LAW.eu.peroxide.percent).toBe(LIMIT_READY_FOR_USE);
    expect(LIMIT_READY_FOR_USE).toStrictEqual(exact(12));
    expect(LAW.eu.name).toBe('European Union');
    expect(LAW.eu.youngestSays).toContain(String(LAW.eu.youngest));
    expect(LAW.eu.youngestSource).toContain('Annex III');
  });
});
