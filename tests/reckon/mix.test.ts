import { describe, expect, it } from 'vitest';
import { fig, mixOf, SHELF, shown } from './bowls-of.ts';

const problems = (mix: string, shelf?: string): string[] =>
  mixOf(mix, shelf).problems.map(({ kind, message }) => `${kind}: ${message}`);

describe('a mix without a shelf', () => {
  it('makes 40 clay + 20vol 1:2 into 80 g of 6 %, 120 g, 4 % ready for use', () => {
    const mix = mixOf('40 clay + 20vol 1:2');
    expect(shown(mix)).toBe('40 clay + 80 6 % developer = 120');
    expect(mix.portions.map(({ role, strength }) => [role, fig(strength)])).toEqual([
      ['base', '0'],
      ['developer', '6'],
    ]);
    expect([mix.base, mix.developer, mix.ratio, mix.ready].map(fig)).toEqual(['40', '80', '2', '4']);
    expect(mix.problems).toEqual([]);
  });

  it('shares a total over parts and a ratio', () => {
    const mix = mixOf('90 g of 2p cream 7/0 + 1p cream 7/43 + 6% 1:1');
    expect(shown(mix)).toBe('30 cream 7/0 + 15 cream 7/43 + 45 6 % developer = 90');
    expect(fig(mix.ready)).toBe('3');
  });

  it('blends two strengths by alligation', () => {
    const mix = mixOf('30 clay + 7.5% from dev-6 dev-9 1:2');
    expect(shown(mix)).toBe('30 clay + 30 dev-6 + 30 dev-9 = 90');
    expect([mix.developer, mix.ratio, mix.ready].map(fig)).toEqual(['60', '2', '5']);
    expect(shown(mixOf('20 clay + 10% from dev-12 dev-6 1:3'))).toBe('20 clay + 40 dev-12 + 20 dev-6 = 80');
  });

  it('rounds three equal parts of 7 g at 1:1.5 to weights that add up', () => {
    const mix = mixOf('7 g of 1p cream 7/0 + 1p cream 7/1 + 1p cream 7/3 + 6% 1:1.5');
    expect(shown(mix)).toBe('1 cream 7/0 + 1 cream 7/1 + 1 cream 7/3 + 4 6 % developer = 7');
    expect(fig(mix.portions[0]?.weight)).toBe('0.93');
  });

  it('names the two facts that disagree, by 20 g', () => {
    expect(problems('40 clay + 80 dev-6 1:1.5')).toEqual([
      'disagree: Bowl A has 80 g dev-6, and 1:1.5 of 40 g clay is 60 g: 20 g apart.',
    ]);
  });

  it('reads shade and amount in either order', () => {
    for (const mix of [
      'cream 7/0 30 + dev-6 45',
      'cream 30 7/0 + dev-6 45',
      '30 cream 7/0 + 45 dev-6',
      '7/0 cream 30 + 45 6%',
    ])
      expect(shown(mixOf(mix, SHELF))).toBe('30 cream 7/0 + 45 dev-6 = 75');
  });

  it('takes a developer by the strength in its name, and any other name as a base', () => {
    const mix = mixOf('20 soot + 3 dev-3 + 4 dev9 + 5 dev-1.9 + 2 water');
    expect(mix.portions.map(({ label, role, strength }) => `${label} ${role} ${fig(strength)}`)).toEqual([
      'soot base 0',
      'dev-3 developer 3',
      'dev9 developer 9',
      'dev-1.9 developer 1.9',
      'water water 0',
    ]);
    expect(mix.problems).toEqual([]);
  });

  it('takes a name beside a strength as that developer, where another name is the base', () => {
    expect(shown(mixOf('40 clay + activator 6% 1:2'))).toBe('40 clay + 80 activator = 120');
    expect(fig(mixOf('40 clay + activator 6% 1:2').ready)).toBe('4');
    expect(shown(mixOf('40 clay 20vol 1:2'))).toBe('40 clay + 80 6 % developer = 120');
    expect(shown(mixOf('40 clay 7.5% from dev-6 dev-9 1:2'))).toBe('40 clay + 40 dev-6 + 40 dev-9 = 120');
    expect(problems('30 clay + 60 dev-6 9%')).toEqual(['disagree: The note says 9 %, and `dev-6` is 6 %.']);
  });

  it('weighs volumes as its salon says, and not otherwise', () => {
    expect(shown(mixOf('40 clay + 80 ml 6%', '', '  policy ml as g'))).toBe('40 clay + 80 6 % developer = 120');
    expect(problems('40 clay + 80 ml dev-6')).toEqual([
      'no-density: The note says ml of `dev-6`, and no line gives its density.',
    ]);
    expect(problems('90 ml of 40 clay + dev-6')).toEqual(['no-density: `90 ml` of a mixture is not a weight.']);
    expect(problems('40 clay + 20vol 1:2 = 4p')).toEqual(['unknown-measure: `4 p` of a mixture is not a weight.']);
  });

  it('prices a mix from the shelf of the salon', () => {
    // 40 g of 25.50 for 500 g, 80 g of 7.50 for a kilogram.
    expect(fig(mixOf('40 clay + 20vol 1:2', SHELF).cost)).toBe('264');
    expect(mixOf('40 clay + 20vol 1:2').cost).toBeUndefined();
  });

  it('compares a total that is claimed, and knows no measures', () => {
    expect(problems('40 clay + 20vol 1:2 = 130')).toEqual(['claim: Bowl A comes to 120 g, and the note says 130 g.']);
    expect(problems('40 clay + 20vol 1:2 = 120')).toEqual([]);
    expect(problems('clay 2 scoop + 40 dev-6')).toEqual(['unknown-measure: `scoop` is no measure of `clay`.']);
    expect(mixOf('~90 g of 30 clay + dev-6').about).toBe(true);
    expect(mixOf('85-90 g of 30 clay + dev-6').about).toBe(true);
  });

  it('holds nothing when nothing is typed', () => {
    const mix = mixOf('');
    expect([mix.portions.length, mix.total, mix.ready, mix.problems.length]).toEqual([0, undefined, undefined, 0]);
  });
});
