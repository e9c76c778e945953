import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isStage, STAGES, stageAt, stageBetween, stageDepth, stageIndex, stageSpan } from '../../src/trade/stages.ts';

const stage = fc.constantFrom(...STAGES);

describe('stage words', () => {
  it('run from least to most lifted', () => {
    expect(STAGES.join(' ')).toBe('black-brown brown red-brown red red-orange orange gold yellow pale-yellow white');
    expect(STAGES.map(stageIndex)).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8, 9]);
  });

  it.each([
    ['orange-yellow', 6],
    ['yellow-orange', 6],
    ['Pale-Yellow', 8],
    ['pale-yellow-white', 8.5],
    ['white-pale-yellow', 8.5],
    ['gold-yellow', 6.5],
    ['orange-gold', 5.5],
    ['orange-red', 4],
    ['red-orange-orange', 4.5],
    ['black-brown-red-brown', 1],
  ])('read %s at %s', (word, place) => {
    expect(stageIndex(word)).toBe(place);
    expect(isStage(word)).toBe(true);
  });

  it.each(['', 'black', 'grey', 'pale', 'orange-', '-orange', 'orange-orange', 'orange-ash', 'red-orange-yellow-gold'])(
    'do not hold "%s"',
    (word) => {
      expect(isStage(word)).toBe(false);
      expect(stageIndex(word)).toBeUndefined();
    },
  );

  it('are found in any case', () => {
    expect(isStage('GOLD')).toBe(true);
  });
});

describe('stageBetween', () => {
  it('is the stage halfway, in either order', () => {
    expect(stageBetween('orange', 'yellow')).toBe('gold');
    expect(stageBetween('yellow', 'orange')).toBe('gold');
    expect(stageBetween('gold', 'orange')).toBe('orange-gold');
    expect(stageBetween('gold', 'gold')).toBe('gold');
    expect(stageBetween('orange-gold', 'gold')).toBe('orange-gold');
    expect(stageBetween('orange', 'ash')).toBeUndefined();
    expect(stageBetween('ash', 'orange')).toBeUndefined();
  });

  it('stands where the joined word stands', () => {
    fc.assert(
      fc.property(stage, stage, (a, b) => {
        fc.pre(a !== b);
        const between = stageBetween(a, b) ?? '';
        expect(stageIndex(between)).toBe(stageIndex(`${a}-${b}`));
        expect(stageBetween(b, a)).toBe(between);
      }),
    );
  });
});

describe('stageAt', () => {
  it('names a place, and a half step by its neighbours', () => {
    expect([0, 4, 4.5, 9].map(stageAt)).toEqual(['black-brown', 'red-orange', 'red-orange-orange', 'white']);
    expect([-1, -0.5, 9.5, 10].map(stageAt)).toEqual([undefined, undefined, undefined, undefined]);
  });
});

describe('stageSpan', () => {
  it('puts the less lifted first', () => {
    expect(stageSpan('yellow', 'orange')).toEqual({ from: 5, to: 7 });
    expect(stageSpan('orange', 'gold-yellow')).toEqual({ from: 5, to: 6.5 });
    expect(stageSpan('orange', 'ash')).toBeUndefined();
    expect(stageSpan('ash', 'orange')).toBeUndefined();
  });
});

describe('stageDepth', () => {
  it('never falls as hair is lifted', () => {
    const depths = STAGES.map(stageDepth);
    expect(depths).toEqual([1, 2, 2.5, 3, 4, 5, 7, 9, 10, 10]);
    expect(stageDepth('pale-yellow-white')).toBe(10);
    expect(stageDepth('ash')).toBeUndefined();
  });
});
