import { describe, expect, test } from 'vitest';
import { findIn, rulesIn, saidIn, textOf } from './compile.ts';

const SHELF = `
  product dev-6 "Cream developer" developer 6%
    density 1.01
  product dev-9 "Cream developer" developer 9%
  product clay "Peregrine clay" lightener
    mix 1:1.5-1:2
  product mud "Peregrine mud" lightener
    mix 1:1.5-1:2
  product paste "Gannet paste" lightener
    mix 1:3
  product bare "No mix line" lightener
  product oil "Used as it is" lightener
    mix none
  range neon "Kelp direct" semi
    mix none
    shades teal
  product milk "Conditioning milk" conditioner
    mix none`;

const visit = (...lines: string[]): string =>
  `${textOf(SHELF)}\nclient wren-abbott "Wren Abbott"\nvisit 2026-09-04 wren-abbott\n${lines.join('\n')}\n`;

describe('ratio-off-mix', () => {
  test.each([
    ['the near end', 'bowl A 40 clay + 60 dev-6'],
    ['the far end', 'bowl A 40 clay + 80 dev-6'],
    ['half a step of the scales over', 'bowl A 25.25 clay + 51 dev-6'],
    ['a hedged weight within a tenth', 'bowl A 40 clay + ~87 dev-6'],
    ['a volume within a fiftieth', 'bowl A 40 clay + 80ml dev-6'],
    ['two of one ratio', 'bowl A 20 clay + 20 mud + 70 dev-6'],
    ['two of different ratios', 'bowl A 20 clay + 20 paste + 200 dev-6'],
    ['one with a mix line and one without', 'bowl A 20 clay + 20 bare + 200 dev-6'],
    ['one without a mix line', 'bowl A 20 bare + 200 dev-6'],
    ['one that is used as it is', 'bowl A 20 oil + 200 dev-6'],
    ['no developer', 'bowl A 20 clay'],
    ['a developer that weighs nothing', 'bowl A 20 clay + 0 dev-6'],
  ])('is silent at %s', (_, line) => {
    expect(rulesIn(visit(line))).not.toContain('ratio-off-mix');
  });

  test.each([
    ['too little', 'bowl A 40 clay + 50 dev-6', 'Bowl A has 50 g developer to 40 g clay, 1:1.25.'],
    ['too much', 'bowl A 40 clay + 90 dev-6', 'Bowl A has 90 g developer to 40 g clay, 1:2.25.'],
    ['too much of a hedge', 'bowl A 40 clay + ~120 dev-6', 'Bowl A has 120 g developer to 40 g clay, 1:3.'],
    ['a volume further off', 'bowl A 40 clay + 84ml dev-6', 'Bowl A has 84.84 g developer to 40 g clay, 1:2.12.'],
    ['a typed ratio', 'bowl A 30 clay + dev-6 1:3', 'Bowl A has 90 g developer to 30 g clay, 1:3.'],
    [
      'two of one ratio',
      'bowl A 20 clay + 20 mud + 100 dev-6',
      'Bowl A has 100 g developer to 40 g clay and mud, 1:2.5.',
    ],
    ['a single ratio', 'bowl A 20 paste + 40 dev-6', 'Bowl A has 40 g developer to 20 g paste, 1:2.'],
  ])('fires at %s', (_, line, message) => {
    expect(saidIn(visit(line))).toEqual([`fix ratio-off-mix: ${message}`]);
  });

  test('gives the weights that fit, and the line they come from', () => {
    const [range] = findIn(visit('bowl A 40 clay + 50 dev-6')).findings;
    expect(range?.expected).toBe('Peregrine clay takes 1:1.5 to 1:2, 60 to 80 g here (its mix line, example.bowl:5).');
    expect(range?.label).toBe('at least 60 g');
    const [single] = findIn(visit('bowl A 20 paste + 40 dev-6')).findings;
    expect(single?.expected).toBe('Gannet paste takes 1:3, 60 g here (its mix line, example.bowl:9).');
  });

  test('is not said again of the bowl made again', () => {
    const again = `${visit('bowl A 40 clay + 90 dev-6')}visit 2026-10-04 wren-abbott\nagain A from 2026-09-04\n`;
    expect(rulesIn(again)).toEqual(['ratio-off-mix']);
  });
});

describe('more-left-than-mixed', () => {
  test.each([
    ['all of it', ['bowl A 30 neon teal', 'left A 30']],
    ['what the scales round up', ['bowl A 30.4 neon teal', 'left A 30.8']],
    ['more than the first of two mixes', ['bowl A 30 neon teal', 'more A 30', 'left A 50']],
    ['something of a bowl without a weight', ['bowl A neon teal', 'left A 50']],
  ])('is silent when %s is left', (_, lines) => {
    expect(rulesIn(visit(...lines))).not.toContain('more-left-than-mixed');
  });

  test('counts what was taken into another bowl', () => {
    const said = saidIn(visit('bowl A 30 neon teal', 'bowl C 20 from A + 10 milk', 'left A 15'));
    expect(said).toEqual(['stop more-left-than-mixed: Bowl A was 30 g, and 15 g are left and 20 g taken out.']);
  });

  test('counts both mixes of a bowl', () => {
    expect(saidIn(visit('bowl A 30 neon teal', 'more A 30', 'left A 65'))).toEqual([
      'stop more-left-than-mixed: Bowl A was 60 g, and 65 g are left.',
    ]);
  });
});

describe('bowl-unmixed', () => {
  test('is one finding for several lines about one missing bowl', () => {
    const lines = [
      'bowl A 30 neon teal',
      'on 14:00 A',
      'off 14:20 A',
      'on 14:00 B',
      'off 14:20 B',
      'left B 5',
      'left C 5',
    ];
    expect(rulesIn(visit(...lines))).toEqual(['bowl-unmixed', 'bowl-unmixed']);
  });
});

describe('said-twice', () => {
  test.each([
    ['a check', ['check 14:10 A', 'check 14:10 A']],
    ['a rinse', ['rinse', 'rinse']],
    ['a wash', ['wash 15 milk', 'wash 15 milk']],
    ['a further mix', ['more A 10', 'more A 10']],
  ])('lets %s repeat', (_, lines) => {
    expect(rulesIn(visit('bowl A 30 neon teal', 'on 14:00 A', 'off 14:20 A', ...lines))).toEqual([]);
  });

  test('looks past white space and capitals, and no further', () => {
    expect(rulesIn(visit('Charge  Foils 65', 'charge foils 65'))).toEqual(['said-twice']);
    expect(rulesIn(visit('charge foils 65', 'charge foils 66'))).toEqual([]);
  });

  test('keeps to one entry', () => {
    const text = `${visit('charge foils 65')}visit 2026-10-04 wren-abbott\ncharge foils 65\n`;
    expect(rulesIn(text)).toEqual([]);
  });

  test('finds a stock line pasted twice', () => {
    expect(
      rulesIn('stock 2026-08-01\n  in clay 2 packs\n  in clay 2 packs\nproduct clay "Clay" lightener\n  pack 500 g 24'),
    ).toEqual(['said-twice']);
  });

  test('takes several facts of one line for one line', () => {
    expect(rulesIn(visit('charge foils 65, foils 65'))).toEqual([]);
  });

  test('is not misled by lines that share a signature', () => {
    // `[` and `{` differ in the bit that parts capitals from small letters.
    expect(rulesIn(visit('note see [1]', 'note see {1}'))).toEqual([]);
  });
});

test('a bowl typed twice is one finding, of the two bowls and not of the lines', () => {
  expect(rulesIn(visit('bowl A 30 neon teal', 'bowl A 30 neon teal'))).toEqual(['bowl-twice']);
});

describe('amount-unweighable', () => {
  test.each([
    ['bowl A 2 scoops clay + dev-6 1:2', '2 scoops'],
    ['bowl A 20ml clay + dev-6 1:2', '20ml'],
  ])('marks the amount with its unit: %s', (line, marked) => {
    const [finding] = findIn(visit(line)).findings;
    expect(finding?.rule).toBe('amount-unweighable');
    const from = Math.floor((finding?.place.at ?? 0) / 0x400000);
    expect(line.slice(from, from + ((finding?.place.at ?? 0) % 0x400000))).toBe(marked);
  });
});

describe('mixed-kept', () => {
  const kept = (...lines: string[]): string[] =>
    saidIn(
      [textOf(SHELF), 'client wren-abbott "Wren Abbott"', 'visit 2026-09-04 wren-abbott', ...lines, ''].join('\n'),
    ).filter((line) => line.includes('kept'));

  test.each([
    ['binned', ['bowl A 40 clay + 60 dev-6', 'left A 10 binned']],
    ['not said what became of', ['bowl A 40 clay + 60 dev-6', 'left A 10']],
    ['none', ['bowl A 40 clay + 60 dev-6', 'left A 0 kept']],
    ['without developer', ['bowl A 40 neon teal', 'left A 10 kept']],
  ])('is silent at what is %s', (_, lines) => {
    expect(kept(...lines)).toEqual([]);
  });

  test('fires at developed colour, taken out of another bowl as well', () => {
    expect(kept('bowl A 40 clay + 60 dev-6', 'left A 55 kept')).toEqual([
      'fix mixed-kept: 55 g of bowl A, mixed with dev-6, is kept.',
    ]);
    expect(kept('bowl A 40 clay + 60 dev-6', 'bowl B 40 from A', 'left B 10 kept')).toHaveLength(1);
  });
});
