import { describe, expect, it } from 'vitest';
import * as depth from '../../src/trade/depth.ts';
import * as stages from '../../src/trade/stages.ts';

const { DEPTH_CONVENTIONS, DEPTHS, depthName, isStage, stageDepth, UNDERCOAT, UNDERCOAT_SOURCE } = depth;

describe('depthName', () => {
  it.each([
    [1, 'black', 'black', 'black'],
    [2, 'very dark brown', 'darkest brown', 'darkest brown'],
    [3, 'dark brown', 'dark brown', 'medium brown'],
    [4, 'medium brown', 'medium brown', 'light brown'],
    [5, 'light brown', 'light brown', 'lightest brown'],
    [6, 'dark blonde', 'lightest brown', 'dark blonde'],
    [7, 'medium blonde', 'dark blonde', 'medium blonde'],
    [8, 'light blonde', 'medium blonde', 'light blonde'],
    [9, 'very light blonde', 'light blonde', 'very light blonde'],
    [10, 'lightest blonde', 'lightest blonde', 'lightest blonde'],
    [11, 'high-lift blonde', 'high-lift blonde', 'high-lift blonde'],
    [12, 'high-lift blonde', 'high-lift blonde', 'high-lift blonde'],
  ])('of %s is %s, %s, %s', (n, a, b, c) => {
    expect([depthName(n), depthName(n, 'A'), depthName(n, 'B'), depthName(n, 'C')]).toEqual([a, a, b, c]);
  });

  it('names a depth between two by both', () => {
    expect(depthName(6.5)).toBe('dark blonde to medium blonde');
    expect(depthName(10.5)).toBe('lightest blonde to high-lift blonde');
    expect(depthName(11.5)).toBe('high-lift blonde');
  });

  it.each([0, 0.5, -1, 12.5, 13])('has none for %s', (n) => {
    expect(depthName(n)).toBeUndefined();
  });

  it('has a name for every depth and a source for every convention', () => {
    expect(DEPTHS).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12]);
    for (const convention of Object.values(DEPTH_CONVENTIONS)) {
      expect(convention.names).toHaveLength(10);
      expect(convention.source).toContain('page');
    }
  });
});

describe('UNDERCOAT', () => {
  it('covers the depths of its chart and names a stage wherever the notation has one', () => {
    expect(Object.keys(UNDERCOAT).map(Number)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10]);
    const named = Object.values(UNDERCOAT).map((undercoat) => undercoat.stage);
    expect(named.slice(0, 2)).toEqual([undefined, undefined]);
    expect(named.slice(2).every((stage) => stage !== undefined && isStage(stage))).toBe(true);
    expect(UNDERCOAT_SOURCE).toContain('single page');
  });

  it('is what stageDepth reads the other way', () => {
    for (const [n, { stage }] of Object.entries(UNDERCOAT))
      if (stage !== undefined) expect(stageDepth(stage)).toBe(Number(n));
  });

  it('passes the stages on', () => {
    for (const [name, value] of Object.entries(stages)) expect(depth).toHaveProperty([name], value);
  });
});
