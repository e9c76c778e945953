import { describe, expect, it } from 'vitest';
import { stageDepth, UNDERCOAT } from '../../src/trade/depth.ts';
import { OPPOSITES, type ToneColour } from '../../src/trade/tone.ts';

describe('training page "Underlying pigment chart"', () => {
  it.each([
    [10, 'pale yellow', '1:0:0', 'violet'],
    [9, 'yellow', '2:0:0', 'violet'],
    [8, 'deep yellow', '3:0:0', 'violet'],
    [7, 'gold', '3:1:0', 'blue-violet'],
    [6, 'gold-orange', '3:2:0', 'blue-violet'],
    [5, 'orange', '3:2:0.5', 'blue'],
    [4, 'red-orange', '3:2:1', 'blue-green'],
    [3, 'red', '3:3:1', 'green'],
    [2, 'red-violet', '3:3:2', 'green'],
    [1, 'plum-black', '3:3:3', 'green'],
  ])('depth %s shows %s, parts %s, countered by %s', (depth, seen, parts, neutraliser) => {
    expect(UNDERCOAT[depth]?.seen).toBe(seen);
    expect(UNDERCOAT[depth]?.parts.join(':')).toBe(parts);
    expect(UNDERCOAT[depth]?.neutraliser).toBe(neutraliser);
  });

  it.each([3, 5, 8, 9, 10])('counters depth %s by the rule violet-yellow, blue-orange, green-red', (depth) => {
    const colour = UNDERCOAT[depth]?.seen.split(' ').at(-1) ?? '';
    expect(OPPOSITES[colour as ToneColour]).toBe(UNDERCOAT[depth]?.neutraliser);
  });

  it('puts gold-orange at 6 and deep yellow at 8, midway between the stages beside them', () => {
    expect([stageDepth('orange-gold'), stageDepth('gold-yellow')]).toEqual([6, 8]);
  });
});
