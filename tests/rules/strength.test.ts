import { describe, expect, test } from 'vitest';
import { findIn, rulesIn, saidIn, textOf } from './compile.ts';

const SHELF = `
  product dev-3 "Cream developer" developer 3%
  product dev-6 "Cream developer" developer 6%
  product dev-9 "Cream developer" developer 9%
  product dev-12 "Cream developer" developer 12%
  product dev-18 "Strong developer" developer 18%
  product to-9 "Up to nine" lightener
    strength to 9%
  product two "Two strengths" lightener
    strength 20vol 9%
  product mild "Three, or up to two" lightener
    strength 3%
  product off "Never on the scalp" lightener
    scalp never
  product low "Low on the scalp" lightener
    scalp to 20vol
  product bond "Mender" additive
  range neon "Kelp direct" semi
    shades teal`;

const visit = (...lines: string[]): string =>
  `${textOf(SHELF)}\nclient wren-abbott "Wren Abbott"\nvisit 2026-09-04 wren-abbott\n${lines.join('\n')}\n`;

describe('strength-not-offered', () => {
  test.each([
    ['a strength up to the most', 'bowl A 20 to-9 + 40 dev-9'],
    ['a strength named in volumes', 'bowl A 20 two + 40 dev-6'],
    ['a blend between two named ones', 'bowl A 20 two + 7.5% from dev-6 dev-9 1:2'],
    ['two developers that make a strength between', 'bowl A 20 two + 20 dev-6 + 20 dev-9'],
    ['no developer', 'bowl A 20 two'],
    ['no strength line', 'bowl A 20 low + 40 dev-12'],
    ['a blend with a weight missing', 'bowl A two + dev-6 + dev-9'],
    ['two developers that weigh nothing', 'bowl A 20 two + 0 dev-3 + 0 dev-12'],
  ])('is silent at %s', (_, line) => {
    expect(rulesIn(visit(line))).not.toContain('strength-not-offered');
  });

  test.each([
    [
      'bowl A 20 to-9 + 40 dev-12',
      'Bowl A has to-9 with 12 %.',
      'Up to nine takes up to 9 % (its strength line, example.bowl:7).',
    ],
    [
      'bowl A 20 two + 40 dev-3',
      'Bowl A has two with 3 %.',
      'Two strengths takes 6 % or 9 % (its strength line, example.bowl:9).',
    ],
    [
      'bowl A 20 two + 10% from dev-9 dev-12 1:2',
      'Bowl A has two with 10 %.',
      'Two strengths takes 6 % or 9 % (its strength line, example.bowl:9).',
    ],
    [
      'bowl A 20 two + 5% from dev-3 dev-6 1:2',
      'Bowl A has two with 5 %.',
      'Two strengths takes 6 % or 9 % (its strength line, example.bowl:9).',
    ],
  ])('fires at %s', (line, message, expected) => {
    const { findings } = findIn(visit(line));
    expect(findings.map((finding) => [finding.message, finding.expected])).toEqual([[message, expected]]);
  });

  test('is not said again of the bowl made again', () => {
    const again = `${visit('bowl A 20 mild + 40 dev-9')}visit 2026-10-04 wren-abbott\nagain A from 2026-09-04\n`;
    expect(rulesIn(again)).toEqual(['strength-not-offered']);
  });
});

describe('ready-over-limit, at 12 % (Regulation (EC) 1223/2009, Annex III, entry 12)', () => {
  test.each([
    ['40 volumes undiluted', 'bowl A 40 dev-12'],
    ['just 12 %, mixed from stronger', 'bowl A 20 low + 40 dev-18'],
    ['a bowl without a weight', 'bowl A low + dev-18'],
  ])('is silent at %s', (_, line) => {
    expect(rulesIn(visit(line))).not.toContain('ready-over-limit');
  });

  test('fires a hair above it', () => {
    expect(saidIn(visit('bowl A 19.99 low + 40 dev-18'))).toEqual([
      'stop ready-over-limit: Bowl A holds 12.002 % peroxide ready for use, in 59.99 g.',
    ]);
  });

  test('stands at the whole bowl where the peroxide came out of another', () => {
    const { findings } = findIn(visit('bowl A 10 low + 60 dev-18', 'bowl B 40 from A + 1 bond'));
    expect(findings.map(({ rule, place }) => [rule, place.line - 20])).toEqual([
      ['ready-over-limit', 0],
      ['ready-over-limit', 1],
    ]);
  });

  test('quotes the law that the salon names, and the same where it names one unknown here', () => {
    for (const law of ['eu', 'elsewhere']) {
      const text = `salon harbour "Harbour Row"\n  policy law ${law}\n${visit('bowl A 20 low + 60 dev-18')}`;
      const found = findIn(text).findings.filter(({ rule }) => rule === 'ready-over-limit');
      expect(found.map(({ expected }) => expected)).toEqual([
        'At most 12 % on the hair (Regulation (EC) 1223/2009, Annex III, entry 12, as replaced by Regulation (EU) 2019/831).',
      ]);
    }
  });
});

describe('on-scalp-strength', () => {
  test.each([
    ['at the most it may have', ['bowl A 20 low + 40 dev-6', 'place A top on-scalp']],
    ['off the scalp', ['bowl A 20 off + 40 dev-9', 'place A top off-scalp 1cm']],
    ['where another bowl is on the scalp', ['bowl A 20 off + 40 dev-9', 'bowl B 30 neon teal', 'place B top on-scalp']],
    ['without a developer', ['bowl A 20 low', 'place A top on-scalp']],
    ['without a scalp line', ['bowl A 20 two + 40 dev-9', 'place A top on-scalp']],
  ])('is silent %s', (_, lines) => {
    expect(rulesIn(visit(...lines))).not.toContain('on-scalp-strength');
  });

  test('fires above it, in volumes as in per cent', () => {
    expect(saidIn(visit('bowl A 20 low + 40 dev-9', 'place A top on-scalp'))).toEqual([
      'stop on-scalp-strength: Bowl A, low with 9 %, is placed on the scalp.',
    ]);
  });

  test('fires for what is never on the scalp, whatever its strength', () => {
    expect(saidIn(visit('bowl A 20 off', 'place A top on–scalp'))).toEqual([
      'stop on-scalp-strength: Bowl A, off, is placed on the scalp.',
    ]);
  });

  test('takes lightener on roots for on the scalp, unless the note says how far off or it lies in foil', () => {
    const at = (place: string): string[] => saidIn(visit('bowl A 20 low + 40 dev-9', place));
    const message = 'is placed at roots: on the scalp, as no `off-scalp` stands.';
    expect(at('place A lengths, roots apply')).toEqual([`stop on-scalp-strength: Bowl A, low with 9 %, ${message}`]);
    for (const place of ['place A roots apply off-scalp 1cm', 'place A roots weave x8 foil', 'place A top slice x4'])
      expect(at(place)).toEqual([]);
    expect(rulesIn(visit('bowl A 20 low + 40 dev-6', 'place A roots apply'))).toEqual([]);
    expect(rulesIn(visit('bowl A 20 two + 40 dev-6', 'place A roots apply'))).toEqual(['scalp-unsaid']);
  });

  test('follows what is taken out of another bowl', () => {
    const lines = ['bowl A 20 off + 40 dev-9', 'bowl B 20 from A + 5 bond', 'place B top on-scalp'];
    expect(rulesIn(visit(...lines))).toEqual(['on-scalp-strength']);
  });
});

describe('scalp-unlisted', () => {
  const plain = (strength: number, ...lines: string[]): string[] =>
    saidIn(
      `${textOf(SHELF)}\nproduct dust "Fulmar dust" lightener\nclient wren-abbott "Wren Abbott"\nvisit 2026-09-04 wren-abbott\nbowl A 30 dust + 60 dev-${strength}\n${lines.join('\n')}\n`,
    ).filter((line) => line.includes('scalp'));

  test('is a fix over 6 %, and a mind up to it', () => {
    const place = 'place A roots apply on-scalp';
    const told = (severity: string, strength: number): string[] => [
      `${severity} scalp-unlisted: Bowl A, dust with ${strength} %, is placed on the scalp, and its leaflet's limit is not on the shelf.`,
    ];
    expect(plain(12, place)).toEqual(told('fix', 12));
    expect(plain(9, place)).toEqual(told('fix', 9));
    expect(plain(6, place)).toEqual(told('mind', 6));
  });

  test('where the line says neither, the roots count as the scalp, and the rule of that says so once', () => {
    expect(plain(12, 'place A roots apply').map((line) => line.slice(0, 16))).toEqual(['fix scalp-unsaid']);
    expect(plain(6, 'place A roots apply').map((line) => line.slice(0, 17))).toEqual(['mind scalp-unsaid']);
  });

  test.each(['place A roots apply off-scalp 1cm', 'place A lengths', 'place A roots weave x20 foil'])(
    'is silent at `%s`',
    (place) => {
      expect(plain(12, place)).toEqual([]);
    },
  );
});
