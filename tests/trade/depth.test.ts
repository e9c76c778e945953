import { describe, expect, it } from 'vitest';
import * as depth from '../../src/trade/depth.ts';
import * as stages from '../../src/trade/stages.ts';

const { isStage, stageDepth, UNDERCOAT } = depth;

describe('UNDERCOAT', () => {
  it('covers the depths of its chart and names a stage wherever the notation has one', () => {
    expect(Object.keys(UNDERCOAT).map(Number)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10]);
    const named = Object.values(UNDERCOAT).map((undercoat) => undercoat.stage);
    expect(named.slice(0, 2)).toEqual([undefined, undefined]);
    expect(named.slice(2).every((stage) => stage !== undefined && isStage(stage))).toBe(true);
  });

  it('is what stageDepth reads the other way', () => {
    for (const [n, { stage }] of Object.entries(UNDERCOAT))
      if (stage !== undefined) expect(stageDepth(stage)).toBe(Number(n));
  });

  it('passes the stages on', () => {
    for (const [name, value] of Object.entries(stages)) expect(depth).toHaveProperty([name], value);
  });
});
