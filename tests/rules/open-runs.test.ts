import { describe, expect, test } from 'vitest';
import { joinSources } from '../../src/journal/journal.ts';
import { readSource } from '../../src/journal/source.ts';
import { type OpenRun, openRuns } from '../../src/reckon/timing/open-runs.ts';
import { reckonAll } from '../../src/reckon/visit.ts';

const SHELF = `product clay "Grey clay" lightener
  mix 1:2
  time 20-50 min from first-on, check every 10 min
  time 20-35 min if on-scalp
product gloss "Gloss" demi
  mix 1:1
  time 20 min
range neon semi
  mix none
  shades teal
product dev-6 "Cream developer" developer 6%
client wren "Wren"
visit 2026-11-25 14:00 wren
  bowl A 40 clay + 80 dev-6
  bowl T 30 gloss + 30 dev-6
`;

const openOf = (...lines: string[]): OpenRun[] => {
  const text = SHELF + lines.map((line) => `  ${line}\n`).join('');
  const visits = reckonAll(joinSources([readSource('a.bowl', Buffer.from(text))])).get('wren') ?? [];
  const [visit] = visits;
  return visit === undefined ? [] : openRuns(visit, []);
};

const at = (hours: number, minutes: number): number => hours * 60 + minutes;

describe('what is on', () => {
  test('is nothing before anything went on, and after all came off', () => {
    expect(openOf()).toEqual([]);
    expect(openOf('on 14:20 A', 'off 14:50 A')).toEqual([]);
  });

  test('has the bounds of its time line, from first on for lightener', () => {
    const [run] = openOf('on 14:20-14:30 A crown');
    expect(run?.time).toEqual({
      product: 'Grey clay',
      from: 'first on',
      near: 20,
      far: 50,
      nearAt: at(14, 40),
      farAt: at(15, 10),
    });
    expect(run?.caution).toMatch(/^Lightener can burn skin/);
  });

  test('is due to be looked at from when it went on, then from the last look', () => {
    expect(openOf('on 14:20 A crown')[0]).toMatchObject({ lastLook: at(14, 20), nextLook: at(14, 30) });
    expect(openOf('on 14:20 A crown', 'check 14:33 A gold')[0]).toMatchObject({
      lastLook: at(14, 33),
      nextLook: at(14, 43),
    });
    expect(openOf('on 14:20 A crown', 'check A gold')[0]).toMatchObject({ lastLook: at(14, 20) });
  });

  test('counts from all on where its kind does, and from the whole of a bowl put on in sections', () => {
    expect(openOf('on 15:00-15:06 T')[0]?.time).toMatchObject({
      from: 'all on',
      nearAt: at(15, 26),
      farAt: at(15, 26),
    });
    const [first] = openOf('on 15:00 T roots', 'on 15:10 T crown');
    expect(first?.time?.farAt).toBe(at(15, 30));
    expect(first?.caution).toMatch(/^Hydrogen peroxide/);
  });

  test('has no bounds without a bowl or a time line', () => {
    expect(openOf('on 14:20')[0]).toMatchObject({ time: undefined, nextLook: undefined });
    expect(openOf('bowl N 30 neon teal', 'on 14:20 N')[0]).toMatchObject({ time: undefined, nextLook: undefined });
  });

  test('is looked at as the plain line says, whatever condition its time has', () => {
    expect(openOf('place A on-scalp', 'on 14:20 A')[0]).toMatchObject({
      time: { near: 20, far: 35 },
      nextLook: at(14, 30),
    });
  });

  test('of two products goes by the nearest end', () => {
    expect(openOf('bowl B 20 clay + 20 gloss + 60 dev-6', 'on 14:20-14:22 B')[0]?.time).toMatchObject({
      product: 'Gloss',
      farAt: at(14, 42),
    });
  });

  test('is only what is left when a part came off', () => {
    const runs = openOf('on 14:20 A crown', 'on 14:25 A nape', 'off 14:40 A crown');
    expect(runs.map(({ run }) => run.zone)).toEqual(['nape']);
  });
});
