import { describe, expect, it } from 'vitest';
import { forecastMix, needsBefore, SALON_UNTOLD, salonMix } from '../../../src/reckon/forecast/forecast.ts';
import { growthFactor, growthPairs, growthShare, SHARE_UNTOLD } from '../../../src/reckon/forecast/growth-share.ts';
import { alike, type Need, needsOf } from '../../../src/reckon/forecast/need.ts';
import { growthOn, nextBowls } from '../../../src/reckon/forecast/next-bowls.ts';
import { addDays } from '../../../src/text/dates.ts';
import { reckonedOf } from '../reckoned.ts';

const need = (given: Partial<Need> = {}): Need => ({
  client: 'a-a',
  date: '2026-01-01',
  bowl: 'A',
  product: 'cream',
  zones: ['roots'],
  roots: true,
  growth: undefined,
  mixed: 100,
  used: 90,
  price: undefined,
  currency: undefined,
  told: true,
  ...given,
});

const used = (...grams: readonly number[]): Need[] =>
  grams.map((one, at) => need({ used: one, mixed: one + 10, date: addDays('2026-01-01', 56 * at) }));

const ASK = { product: 'cream', zones: ['roots'], roots: true, growth: undefined };

describe('what a bowl needed', () => {
  const needs = (lines: string): readonly Need[] =>
    reckonedOf(`visit 2026-09-04 wren-abbott\n${lines}`).flatMap(needsOf);
  const short = (lines: string): unknown[][] =>
    needs(lines).map(({ bowl, mixed, used, told }) => [bowl, mixed, used, told]);

  it('is mixed, less left; without a `left` line all of it, and it is not told', () => {
    expect(short('bowl A 40 clay + 80 dev-6\nleft A 15\nbowl B 40 clay + 80 dev-6')).toEqual([
      ['A', 120, 105, true],
      ['B', 120, 120, false],
    ]);
  });

  it('has its further mixes in it', () => {
    expect(short('bowl A 40 clay + 80 dev-6\nmore A 60\nleft A 15')).toEqual([['A', 180, 165, true]]);
  });

  it('is not lessened by what went home out of what was left', () => {
    expect(short('bowl A 40 clay + 80 dev-6\nleft A 15\nhome A 15')).toEqual([['A', 120, 105, true]]);
  });

  it('keeps apart a bowl whose own name ends in a figure', () => {
    expect(short('bowl B1 40 clay + 80 dev-6\nmore B1 60\nbowl B9 20 clay + 40 dev-6').map((one) => one[0])).toEqual([
      'B1',
      'B9',
    ]);
  });

  it('goes on new growth where all of it is noted on roots, and feeds nothing else', () => {
    const roots = (lines: string): boolean[] => needs(lines).map((one) => one.roots);
    expect(roots('bowl A 30 cream 6/0 + 45 dev-6\nplace A roots')).toEqual([true]);
    expect(roots('bowl A 30 cream 6/0 + 45 dev-6\non 10:00 A roots crown')).toEqual([true]);
    expect(roots('bowl A 30 cream 6/0 + 45 dev-6\nplace A roots\nmore A 30')).toEqual([true]);
    expect(roots('bowl A 30 cream 6/0 + 45 dev-6\nplace A roots\non 10:00 A roots\non 10:30 A lengths')).toEqual([
      false,
    ]);
    expect(roots('bowl A 30 cream 6/0 + 45 dev-6\nplace A roots, ends')).toEqual([false]);
    expect(roots('bowl A 30 cream 6/0 + 45 dev-6\nplace A roots comb-through')).toEqual([false]);
    expect(roots('bowl A 30 cream 6/0 + 45 dev-6\nbowl D 40 from A\nplace A roots\nplace D ends')[0]).toBe(false);
    expect(roots('bowl A 40 clay + 80 dev-6\nplace A top on-scalp')).toEqual([false]);
    expect(roots('bowl A 40 clay + 80 dev-6\nplace A lengths off-scalp 1cm')).toEqual([false]);
    expect(roots('bowl A 40 clay + 80 dev-6')).toEqual([false]);
  });

  it('is nothing to learn from where more was left than mixed, or the weight is not known', () => {
    expect(short('bowl A 40 clay + 80 dev-6\nleft A 150')).toEqual([]);
    expect(short('bowl A clay + dev-6')).toEqual([]);
    expect(short('bowl A 40 clay + 80 dev-6\nleft A 10\nbowl C 40 from A').map((one) => one[0])).toEqual(['A']);
  });

  it('is of the product that most of its base is', () => {
    const product = (lines: string): unknown => needs(lines)[0]?.product;
    expect(product('bowl A 30 cream 7/0 + 10 clay + 80 dev-6')).toBe('cream');
    expect(product('bowl A 10 cream 7/0 + 30 clay + 10 cream 6/0 + 80 dev-6')).toBe('clay');
    expect(product('bowl A 20 cream 7/0 + 30 clay + 20 cream 6/0 + 80 dev-6')).toBe('cream');
  });

  it('knows whether it went on new growth, and how long that was', () => {
    const [root, length] = needs(
      'regrowth 2cm\nbowl A 40 clay + 80 dev-6\nplace A roots\nbowl B 40 clay + 80 dev-6\nplace B lengths',
    );
    expect([root?.roots, root?.growth, length?.roots]).toEqual([true, 20, false]);
  });
});

describe('bowls that are alike', () => {
  it('are of the same product at the same places; failing that, of the same product on roots or off', () => {
    const [there, near] = [need(), need({ zones: ['roots top'] })];
    const off = need({ zones: ['lengths'], roots: false });
    expect(alike([there, near, off], ASK)).toEqual({ needs: [there], there: true });
    expect(alike([near, off], ASK)).toEqual({ needs: [near], there: false });
    expect(alike([off, need({ product: 'gloss' })], ASK).needs).toEqual([]);
  });
});

describe('the forecast', () => {
  it('is the middle of what the last five needed: one odd visit does not move it', () => {
    expect(forecastMix(used(80, 90, 85), ASK)?.need).toBe(85);
    expect(forecastMix(used(80, 90, 85, 400, 86), ASK)?.need).toBe(86);
    expect(forecastMix(used(500, 80, 90), ASK)?.need).toBe(90);
    expect(forecastMix(used(500, 500, 10, 20, 30, 40, 50), ASK)?.need).toBe(30);
  });

  it('has its range, and a little to spare in what is to be mixed', () => {
    const found = forecastMix(used(90, 90), ASK);
    expect([found?.low, found?.high, found?.mix].map((one) => Math.round(one ?? 0))).toEqual([75, 105, 99]);
    expect([found?.lastMixed, found?.from.length, found?.there, found?.scaled]).toEqual([100, 2, true, false]);
  });

  it('has another range where like bowls went elsewhere', () => {
    const salon = { ...SALON_UNTOLD, elsewhere: { low: 0.5, high: 2, mix: 1.5 } };
    expect(forecastMix([need({ zones: ['roots top'] })], ASK, salon)).toMatchObject({ low: 45, high: 180, mix: 135 });
  });

  it('adds nothing while no note says what was left: not a tenth more, visit after visit', () => {
    const untold = [need({ used: 100, told: false })];
    expect(forecastMix(untold, ASK)).toMatchObject({ need: 100, mix: 100 });
  });

  it('is scaled by no more than twice the growth, and no less than half', () => {
    const grown = [need({ used: 90, growth: 20 })];
    expect(forecastMix(grown, { ...ASK, growth: 400 })?.need).toBe(135);
    expect(forecastMix(grown, { ...ASK, growth: 1 })?.need).toBe(67.5);
  });

  it('goes by bowls whose need is told while there are any', () => {
    const untold = need({ used: 120, told: false, date: '2026-06-01' });
    expect(forecastMix([...used(80, 90), untold], ASK)?.need).toBe(85);
    expect(forecastMix([untold], ASK)?.need).toBe(120);
  });

  it('grows with the new growth on roots, and nowhere else', () => {
    const grown = [need({ used: 90, growth: 20 })];
    expect(forecastMix(grown, { ...ASK, growth: 40 })?.need).toBe(135);
    expect(forecastMix(grown, { ...ASK, growth: 40 }, { ...SALON_UNTOLD, share: 0 })?.need).toBe(90);
    expect(forecastMix(grown, { ...ASK, growth: 40 }, { ...SALON_UNTOLD, share: 1 })?.need).toBe(180);
    expect(forecastMix(grown, ASK)?.scaled).toBe(false);
    const lengths = need({ used: 90, growth: 20, roots: false, zones: ['lengths'] });
    expect(forecastMix([lengths], { ...lengths, growth: 40 })).toMatchObject({ need: 90, scaled: false });
  });

  it('is none without a bowl like it', () => {
    expect(forecastMix([], ASK)).toBeUndefined();
  });
});

describe('what the salon teaches', () => {
  it('is a choice of ours until there is enough', () => {
    expect(salonMix(used(80, 90))).toEqual(SALON_UNTOLD);
    expect(growthShare([])).toBe(SHARE_UNTOLD);
  });

  it('is the share that fits best, and a tie goes to the smaller', () => {
    const pairs = Array.from({ length: 12 }, () => ({ ratio: growthFactor(20, 40, 0.75), from: 20, to: 40 }));
    expect(growthShare(pairs)).toBe(0.75);
    expect(growthShare(pairs.map((pair) => ({ ...pair, ratio: 1, to: 20 })))).toBe(0);
  });

  it('pairs neighbours of one client, product and place whose growth is known', () => {
    const rows = [
      need({ used: 50, growth: 20 }),
      need({ used: 60, growth: undefined }),
      need({ used: 75, growth: 30 }),
      need({ used: 90, growth: 30, client: 'b-b' }),
      need({ used: 90, growth: 30, told: false }),
    ];
    expect(growthPairs(rows)).toEqual([{ ratio: 1.5, from: 20, to: 30 }]);
  });

  it('is the range of its own misses, and a level at which as few run short as by the last time', () => {
    const heads = Array.from({ length: 30 }, (_, head) => [
      need({ client: `h-${head}`, used: 100, mixed: 110 }),
      need({ client: `h-${head}`, used: 85 + head, date: '2026-03-01' }),
    ]).flat();
    const { there } = salonMix(heads);
    // Needs of 85 to 114 beside forecasts of 100; 111 to 114 run short of the 110 mixed the last time: 4 of 30.
    expect(there.low).toBeCloseTo(0.879, 3);
    expect(there.high).toBeCloseTo(1.111, 3);
    expect(there.mix).toBeCloseTo((85 + 29 * (1 - 4 / 30)) / 100, 6);
  });
});

describe('the bowls of the next visit', () => {
  const notes = `visit 2026-01-01 wren-abbott
  bowl A 40 clay + 80 dev-6
  place A roots
  left A 20
visit 2026-03-02 wren-abbott
  regrowth 21 mm
  bowl A 40 clay + 80 dev-6
  place A roots
  left A 20`;

  it('are forecast on the new growth of their day, at her own rate', () => {
    const visits = reckonedOf(notes);
    const last = visits.at(-1);
    const salon = salonMix(needsBefore(new Map([['wren-abbott', visits]]), '2026-05-31'));
    expect(growthOn(visits, '2026-05-31')).toBeCloseTo((90 * 21) / 60, 9);
    expect(growthOn(visits, '2026-01-01')).toBeUndefined();
    const [bowl] = last === undefined ? [] : nextBowls(last, visits, '2026-05-31', salon);
    // Only the second bowl's growth is known: 100 g on 21 mm is 100 × (0.5 + 0.5 × 31.5 ÷ 20) ÷ (0.5 + 0.5 × 21 ÷ 20) on 31.5.
    expect(last && nextBowls(last, visits, '2026-01-01', salon)).toEqual([]);
    expect(bowl?.bowl).toBe('A');
    expect(bowl?.forecast.need).toBeCloseTo((100 + (100 * 1.2875) / 1.025) / 2, 6);
  });
});
