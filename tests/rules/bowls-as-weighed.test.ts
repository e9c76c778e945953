import { describe, expect, it } from 'vitest';
import { joinSources } from '../../src/journal/journal.ts';
import { readSource } from '../../src/journal/source.ts';
import type { BowlReckoned } from '../../src/reckon/model.ts';
import { reckonAll } from '../../src/reckon/visit.ts';
import additiveDose from '../../src/rules/dose/additive-dose.ts';
import ratioOffMix from '../../src/rules/mix/ratio-off-mix.ts';
import onScalpStrength from '../../src/rules/strength/on-scalp-strength.ts';
import readyOverLimit from '../../src/rules/strength/ready-over-limit.ts';
import strengthNotOffered from '../../src/rules/strength/strength-not-offered.ts';
import { toNumber } from '../../src/text/exact.ts';
import { FILE } from './compile.ts';
import { saidBy } from './one-rule.ts';

const SHELF = `
product dev-3 "Cream developer" developer 3%
  pack 1 l 10.00
product dev-6 "Cream developer" developer 6%
  pack 1 l 10.00
product dev-9 "Cream developer" developer 9%
  pack 1 l 20.00
product dev-18 "Strong developer" developer 18%
product clay "Peregrine clay" lightener
  mix 1:1.5-1:2
  strength to 6%
  scalp to 6%
  pack 500 g 50.00
product bond "Mender" additive
  dose 1-2 per 10
salon harbour "Harbour Row"
  policy ml as g
client wren-abbott "Wren Abbott"
visit 2026-09-04 wren-abbott
`;

const notes = (...lines: string[]): string => SHELF + lines.map((line) => `  ${line}\n`).join('');

const bowlOf = (name: string, ...lines: string[]): BowlReckoned => {
  const journal = joinSources([readSource(FILE, new TextEncoder().encode(notes(...lines)))]);
  const bowl = reckonAll(journal)
    .get('wren-abbott')?.[0]
    ?.bowls.find((one) => one.name === name);
  if (bowl === undefined) throw new Error(`no bowl ${name}`);
  return bowl;
};

const two = (value: Parameters<typeof toNumber>[0] | undefined): number | undefined =>
  value === undefined ? undefined : Math.round(toNumber(value) * 100) / 100;

describe('a bowl as it was weighed', () => {
  it('has the ratio and strength of the scales, with what was meant beside them', () => {
    const bowl = bowlOf('A', 'bowl A 40 clay + 80 dev-6', 'weighed A 80 clay, 40 dev-6');
    // 40 g of 6 % in 120 g.
    expect([two(bowl.ratio), two(bowl.ready), two(bowl.base), two(bowl.developer)]).toEqual([0.5, 2, 80, 40]);
    expect([two(bowl.meant?.ratio), two(bowl.meant?.ready)]).toEqual([2, 4]);
  });

  it('has no other figures where the scales agree, or said the whole alone', () => {
    expect(bowlOf('A', 'bowl A 40 clay + 80 dev-6', 'weighed A 40 clay, 80 dev-6').meant).toBeUndefined();
    const whole = bowlOf('A', 'bowl A 40 clay + 80 dev-6', 'weighed A 118');
    expect([whole.meant, two(whole.ratio), two(whole.mixed)]).toEqual([undefined, 2, 118]);
  });

  it('gives its strength to what is taken out of it', () => {
    const bowl = bowlOf('B', 'bowl A 40 clay + 80 dev-6', 'weighed A 80 clay, 40 dev-6', 'bowl B 60 from A');
    expect([two(bowl.ready), two(bowl.meant?.ready)]).toEqual([2, 4]);
  });

  it('holds what stood on the scales in place of what was meant, and costs that', () => {
    const bowl = bowlOf('A', 'bowl A 40 clay + 80 dev-6', 'weighed A 40 clay, 80 dev-9');
    expect(bowl.held.map(({ label }) => label)).toEqual(['clay', 'dev-9']);
    expect([two(bowl.ready), two(bowl.mixed)]).toEqual([6, 120]);
    // 40 g at 10 p and 80 g at 2 p.
    expect(two(bowl.cost)).toBe(560);
  });

  it('holds what came besides', () => {
    const bowl = bowlOf('A', 'bowl A 40 clay + 80 dev-6', 'weighed A 40 clay, 80 dev-6, 4 bond');
    expect(bowl.held.map(({ label }) => label)).toEqual(['clay', 'dev-6', 'bond']);
    expect(two(bowl.mixed)).toBe(124);
  });

  it('is remade as it was meant', () => {
    const bowl = bowlOf('B', 'bowl A 40 clay + 80 dev-6', 'weighed A 80 clay, 40 dev-6', 'again B from A');
    expect([two(bowl.ratio), bowl.meant]).toEqual([2, undefined]);
  });
});

describe('rules on a bowl that was weighed', () => {
  it('find the ratio of the scales at the scales', () => {
    expect(saidBy(ratioOffMix, notes('bowl A 40 clay + 80 dev-6', 'weighed A 80 clay, 40 dev-6'))).toEqual([
      'fix: Bowl A was weighed as 40 g developer to 80 g clay, 1:0.5; 1:2 was meant.',
    ]);
  });

  it('say nothing of a hand that poured a few grams beside it', () => {
    const poured = ['weighed A 41 clay, 82 dev-6', 'weighed A 39 clay, 83 dev-6', 'weighed A 41 clay', 'weighed A 124'];
    for (const weighed of poured) expect(saidBy(ratioOffMix, notes('bowl A 40 clay + 80 dev-6', weighed))).toEqual([]);
  });

  it('find the ratio of the scales in a bowl made again', () => {
    const lines = ['bowl A 40 clay + 80 dev-6', 'again B from A', 'weighed B 80 clay, 40 dev-6'];
    expect(saidBy(ratioOffMix, notes(...lines))).toHaveLength(1);
  });

  it('go by the developer that was weighed', () => {
    const lines = ['bowl A 40 clay + 80 dev-6', 'weighed A 40 clay, 80 dev-9', 'place A roots on-scalp'];
    expect(saidBy(onScalpStrength, notes(...lines))).toEqual(['stop: Bowl A, clay with 9 %, is placed on the scalp.']);
    expect(saidBy(strengthNotOffered, notes(...lines))).toEqual(['fix: Bowl A has clay with 9 %.']);
  });

  it('go by the strength that was meant where a blend was poured a gram beside it', () => {
    const lines = ['bowl A 40 clay + 6% from dev-3 dev-9 1:2', 'weighed A 40 clay, 40 dev-3, 41 dev-9'];
    expect(saidBy(strengthNotOffered, notes(...lines))).toEqual([]);
    const far = ['bowl A 40 clay + 6% from dev-3 dev-9 1:2', 'weighed A 40 clay, 20 dev-3, 60 dev-9'];
    expect(saidBy(strengthNotOffered, notes(...far))).toEqual(['fix: Bowl A has clay with 7.5 %.']);
  });

  it('go by the grams that were weighed for the legal limit and for a dose', () => {
    const strong = ['bowl A 40 clay + 60 dev-18', 'weighed A 20 clay, 60 dev-18'];
    expect(saidBy(readyOverLimit, notes(...strong))).toEqual([
      'stop: Bowl A holds 13.5 % peroxide ready for use, in 80 g.',
    ]);
    const dosed = ['bowl A 40 clay + 80 dev-6 + 4 bond', 'weighed A 40 clay, 80 dev-6, 15 bond'];
    expect(saidBy(additiveDose, notes(...dosed))).toEqual(['fix: Bowl A has 15 g bond to 40 g of base.']);
  });
});
