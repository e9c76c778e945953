import { describe, expect, test } from 'vitest';
import additiveDose from '../../src/rules/dose/additive-dose.ts';
import amountUnlikely from '../../src/rules/dose/amount-unlikely.ts';
import baseMissing from '../../src/rules/dose/base-missing.ts';
import { foundBy, notesOf, saidBy, visitOf } from './one-rule.ts';

describe('additive-dose', () => {
  const said = (...lines: readonly string[]): string[] => saidBy(additiveDose, notesOf([], visitOf(...lines)));

  test.each([
    ['within it', ['bowl A 40 clay + 80 dev-6', 'plus A 8 bond']],
    ['half a step of the scales above it', ['bowl A 40 clay + 80 dev-6 + 8.5 bond']],
    ['half a step below it', ['bowl A 40 clay + 80 dev-6 + 3.5 bond']],
    ['without a weight', ['bowl A 40 clay + 80 dev-6 + bond']],
    ['without a dose line', ['bowl A 40 clay + 80 dev-6 + 30 milk']],
    ['in a bowl that was left', ['bowl A 40 clay + 80 dev-6 + 30 bond', 'left A 150']],
  ])('is silent %s', (_, lines) => {
    expect(said(...lines)).toEqual([]);
  });

  test('fires above and below it, and once for a bowl made again', () => {
    expect(said('bowl A 40 clay + 80 dev-6 + 9 bond')).toEqual(['fix: Bowl A has 9 g bond to 40 g of base.']);
    expect(said('bowl A 40 clay + 80 dev-6 + 3 bond')).toEqual(['fix: Bowl A has 3 g bond to 40 g of base.']);
    expect(said('bowl A 40 clay + 80 dev-6 + 9 bond', 'again B from A')).toHaveLength(1);
  });

  test('says one weight where the dose is one', () => {
    const notes = notesOf([], visitOf('bowl A 40 clay + 80 dev-6 + 9 fix'), [
      'product fix "Fixer" additive',
      '  dose 1 per 10',
    ]);
    expect(foundBy(additiveDose, notes).map(({ expected, label }) => [expected, label])).toEqual([
      ['Fixer takes 1 per 10, here 4 g (its dose line, example.bowl:2).', 'over 4 g'],
    ]);
  });

  test('is silent for an additive that counts in the ratio, and for a dose per nothing', () => {
    const dosed = (head: string, dose: string): string[] =>
      saidBy(additiveDose, notesOf([], visitOf('bowl A 40 clay + 80 dev-6 + 30 fix'), [head, dose]));
    expect(dosed('product fix "Fixer" additive in ratio', 'dose 1 per 10')).toEqual([]);
    expect(dosed('product fix "Fixer" additive', 'dose 1 per 0')).toEqual([]);
  });
});

describe('base-missing', () => {
  const said = (...lines: readonly string[]): string[] => saidBy(baseMissing, notesOf([], visitOf(...lines)));

  test.each([
    ['with a base', ['bowl A 40 clay + 80 dev-6']],
    ['with a name that is not on the shelf', ['bowl A 80 dev-6 + 40 caly']],
    ['with what came out of another bowl', ['bowl A 40 clay + 80 dev-6', 'bowl B 40 from A + 10 dev-6']],
    ['without a developer', ['bowl A 4 bond']],
    ['where it was left', ['bowl A 80 dev-6', 'left A 80']],
  ])('is silent %s', (_, lines) => {
    expect(said(...lines)).toEqual([]);
  });

  test('fires at developer alone, thinned or with an additive', () => {
    expect(said('bowl A 80 dev-6 + 20 water')).toEqual(['mind: Bowl A holds `dev-6` and nothing to develop.']);
    expect(said('bowl A 80 dev-6 + 4 bond')).toEqual(['mind: Bowl A holds `dev-6` and `bond` and nothing to develop.']);
  });
});

describe('amount-unlikely', () => {
  const said = (...lines: readonly string[]): string[] => saidBy(amountUnlikely, notesOf([], visitOf(...lines)));

  test.each([
    ['399 g', ['bowl A 133 clay + 266 dev-6']],
    ['a conditioner', ['bowl A 600 milk']],
    ['6 g of colour', ['bowl A 6 cream 6/0 + 9 dev-6', 'place A roots']],
    ['little for a small place', ['bowl A 5 cream 6/0 + 7 dev-6', 'place A roots hairline']],
    ['little beside another bowl', ['bowl A 5 cream 6/0 + 7 dev-6', 'bowl B 30 cream 6/0 + 45 dev-6', 'place A roots']],
    ['little with no place named', ['bowl A 5 cream 6/0 + 7 dev-6']],
  ])('is silent at %s', (_, lines) => {
    expect(said(...lines)).toEqual([]);
  });

  test('fires at a nought too many and at one too few', () => {
    expect(said('bowl A 150 clay + 250 dev-6')).toEqual(['mind: Bowl A is 400 g.']);
    expect(said('bowl A 5 cream 6/0 + 7 dev-6', 'place A roots, lengths')).toEqual([
      'mind: Bowl A has 5 g of colour for roots.',
    ]);
  });
});
