import { describe, expect, test } from 'vitest';
import { findIn, rulesIn, saidIn, textOf } from './compile.ts';

const SHELF = `
  product dev-0 "Second half" developer 0%
  product dev-6 "Cream developer" developer 6%
  product dev-9 "Cream developer" developer 9%
  product clay "Peregrine clay" lightener
  range neon "Kelp direct" semi
    mix none
    shades teal
  range mixed "Direct with a ratio" semi
    mix 1:1
    shades teal
  range bare "Direct without a line" semi
    shades teal
  range rinse "Silver rinse" temporary
    mix none
    shades silver
  range toner "Tidewater toner" toner
  range gloss "Tidewater gloss" demi
  range told "Toner with its strengths" toner
    strength 9%`;

const visit = (...lines: string[]): string =>
  `${textOf(SHELF)}\nclient wren-abbott "Wren Abbott"\ntest skin 2026-09-01 11:00 toner, gloss, told read 2026-09-03 11:30 clear\nvisit 2026-09-04 wren-abbott\n${lines.join('\n')}\n`;

describe('peroxide-on-direct', () => {
  test.each([
    ['no developer', 'bowl A 30 neon teal'],
    ['a developer of 0 %', 'bowl A 30 neon teal + 30 dev-0'],
    ['a ratio of its own', 'bowl A 30 mixed teal + 30 dev-6'],
    ['other colour', 'bowl A 30 toner 9/1 + 30 dev-6'],
  ])('is silent at %s', (_, line) => {
    expect(rulesIn(visit(line))).toEqual([]);
  });

  test.each([
    ['bowl A 30 neon teal + 30 dev-6', 'fix peroxide-on-direct: Bowl A has neon with developer of 6 %.'],
    ['bowl A 30 rinse silver + 30 dev-9', 'fix peroxide-on-direct: Bowl A has rinse with developer of 9 %.'],
    ['bowl A 30 bare teal + 30 dev-6', 'mind peroxide-on-direct: Bowl A has bare with developer of 6 %.'],
  ])('fires at %s', (line, message) => {
    expect(saidIn(visit(line))).toEqual([message]);
  });

  test('says no strength while it is not known', () => {
    expect(saidIn(visit('bowl A 30 bare teal + dev-6 + dev-9'))).toContain(
      'mind peroxide-on-direct: Bowl A has bare with developer.',
    );
  });

  test('cites the shelf where it speaks, and is not said again of the bowl made again', () => {
    const text = `${visit('bowl A 30 neon teal + 30 dev-6')}visit 2026-10-04 wren-abbott\nagain A from 2026-09-04\n`;
    expect(findIn(text).findings.map(({ expected }) => expected)).toEqual([
      'Kelp direct is used as it is (its mix line, example.bowl:6).',
    ]);
  });
});

describe('toner-strength', () => {
  test.each([
    ['6 %', 'bowl A 20 toner 9/1 + 20 dev-6'],
    ['a range that says its strengths', 'bowl A 20 told 9/1 + 20 dev-9'],
    ['no developer', 'bowl A 20 toner 9/1'],
    ['lightener in the bowl', 'bowl A 20 toner 9/1 + 20 clay + 20 dev-9'],
    ['developer alone', 'bowl A 20 dev-9'],
  ])('is silent at %s', (_, line) => {
    expect(rulesIn(visit(line))).not.toContain('toner-strength');
  });

  test('fires above 6 %, once', () => {
    const text = `${visit('bowl A 20 gloss 9/1 + 20 toner 9/1 + 20 dev-9')}visit 2026-10-04 wren-abbott\nagain A from 2026-09-04\n`;
    expect(saidIn(text)).toEqual(['mind toner-strength: Bowl A has gloss with 9 %.']);
  });
});
