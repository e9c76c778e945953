import { converter, differenceEuclidean } from 'culori';
import { describe, expect, test } from 'vitest';
import { DEPTHS } from '../../src/trade/depth.ts';
import { STAGES } from '../../src/trade/stages.ts';
import { hexOf, type Lab, stageSwatch, swatch } from '../../src/trade/swatch.ts';

const toLab = converter('lab65');
const lab = (hex: string | undefined): Lab => toLab(hex ?? '') as Lab;
const between = differenceEuclidean('lab65');
const distance = (one: Lab, other: Lab): number => between({ mode: 'lab65', ...one }, { mode: 'lab65', ...other });

test('a colour that a screen can show comes back as it went', () => {
  for (const hex of ['#000000', '#ffffff', '#8f6e50', '#102030']) expect(hexOf(lab(hex))).toBe(hex);
});

describe('swatches', () => {
  test('each depth is lighter than the one before, up to 10', () => {
    const light = DEPTHS.slice(0, 10).map((depth) => lab(swatch(depth)).l);
    expect(light).toEqual(light.toSorted((a, b) => a - b));
    expect(new Set(light).size).toBe(10);
  });

  test('depths outside 1 to 10 are drawn as the nearest, depths between lie between', () => {
    expect([swatch(0), swatch(12)]).toEqual([swatch(1), swatch(10)]);
    expect(lab(swatch(6.5)).l).toBeCloseTo((lab(swatch(6)).l + lab(swatch(7)).l) / 2, 0);
  });

  test('tones of one depth can be told apart', () => {
    const tones = ['neutral', 'yellow', 'orange', 'red', 'violet', 'blue', 'green'] as const;
    const drawn = tones.map((tone) => lab(swatch(7, tone)));
    for (const [i, one] of drawn.entries())
      for (const other of drawn.slice(i + 1)) expect(distance(one, other)).toBeGreaterThan(5);
    expect(swatch(7, 'neutral')).toBe(swatch(7));
  });

  test('every stage is drawn, red redder and yellow yellower than the hair itself; another word is not', () => {
    for (const stage of STAGES) expect(stageSwatch(stage)).toMatch(/^#[0-9a-f]{6}$/);
    expect(lab(stageSwatch('red')).a).toBeGreaterThan(lab(swatch(3)).a + 5);
    expect(lab(stageSwatch('yellow')).b).toBeGreaterThan(lab(swatch(9)).b + 5);
    expect(stageSwatch('teal')).toBeUndefined();
  });
});
