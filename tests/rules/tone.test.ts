import { describe, expect, test } from 'vitest';
import { findIn, rulesIn, saidIn, textOf } from './compile.ts';

const SHELF = `
  product act "Activator" developer 1.9%
  product dev-6 "Cream developer" developer 6%
  product clay "Peregrine clay" lightener
  range toner "Tidewater toner" toner
    tones 0 natural, 1 ash, 2 violet, 3 gold, 7 matt, 8 blue, 9 cool
    shades clear, pearl
  range gloss "Tidewater gloss" demi
    tones 0 natural, 1 ash, 2 violet, 3 gold, 4 copper
  range cream "Larkfield cream" permanent
    tones 0 natural, 1 ash, 3 gold
  range fill "Larkfield filler" filler
    mix none
    tones 3 gold, 4 copper
  range neon "Kelp direct" semi
    mix none
    shades teal, violet, brown, clear`;

const notes = (client: readonly string[], ...visits: (readonly string[])[]): string =>
  [
    textOf(SHELF),
    'client wren-abbott "Wren Abbott"',
    'test skin 2025-12-01 11:00 toner, gloss, cream, fill read 2025-12-03 11:30 clear',
    ...client,
    ...visits.flatMap((lines, index) => [`visit 2026-0${index + 1}-10 wren-abbott`, ...lines]),
    '',
  ].join('\n');

const OURS = ['tone-wrong-opposite', 'toner-over-dark', 'filler-missing', 'tone-against-want', 'direct-dye-on-dark'];

const ours = (text: string): string[] => rulesIn(text).filter((rule) => OURS.includes(rule));

const said = (text: string): string[] => saidIn(text).filter((line) => OURS.some((rule) => line.includes(rule)));

const visit = (...lines: string[]): string => notes([], lines);

/** Lightened at the top to a stage, then toned. */
const toned = (seen: string, toner: string, on = 'on 14:50 T top'): string =>
  visit(
    'bowl A 40 clay + 80 dev-6',
    'on 14:00 A top, sides',
    `check 14:40 ${seen}`,
    'off 14:42 A',
    `bowl T ${toner}`,
    on,
    'off 15:00 T',
  );

describe('tone-wrong-opposite', () => {
  test.each([
    ['violet over yellow', toned('top yellow', '20 toner 8/2 + 20 act')],
    ['violet over gold', toned('top gold', '20 toner 7/2 + 20 act')],
    ['ash over orange', toned('top orange', '20 toner 7/1 + 20 act')],
    ['ash with violet over orange', toned('top orange', '20 toner 7/12 + 20 act')],
    ['violet and gold together', toned('top orange', '20 toner 7/23 + 20 act')],
    ['gold over orange', toned('top orange', '20 toner 7/3 + 20 act')],
    ['natural over orange', toned('top orange', '20 toner 6/0 + 20 act')],
    ['a tone of no colour', toned('top orange', '20 toner 6/9 + 20 act')],
    ['clear', toned('top orange', '20 toner clear + 20 act')],
    ['another place', toned('top yellow, sides orange', '20 toner 8/2 + 20 act')],
    [
      'the lengths, of which one place is right',
      toned('top yellow, sides orange', '20 toner 8/2 + 20 act', 'on 14:50 T lengths'),
    ],
    ['no stage seen', toned('A 5', '20 toner 7/2 + 20 act')],
    ['a weight that is missing', toned('top orange', '20 toner 7/2 + toner 8/2 + 20 act')],
    ['a product that is not on the shelf', toned('top orange', '20 toener 7/2 + 20 act')],
    ['permanent colour', toned('top orange', '20 cream 7/1 + 20 dev-6')],
  ])('is silent at %s', (_, text) => {
    expect(ours(text)).not.toContain('tone-wrong-opposite');
  });

  test.each([
    ['violet over orange', toned('top orange', '20 toner 7/2 + 20 act'), 'Bowl T is violet (7/2), over orange.'],
    ['a shade by name', toned('top orange', '20 toner pearl + 20 act'), 'Bowl T is violet (pearl), over orange.'],
    [
      'the lighter end of a span',
      toned('top red to orange', '20 gloss 6/2 + 40 act'),
      'Bowl T is violet (6/2), over orange.',
    ],
    ['matt over yellow', toned('top yellow', '20 toner 9/7 + 20 act'), 'Bowl T is green (9/7), over yellow.'],
    [
      'the lengths',
      toned('top orange, sides red', '20 toner 7/2 + 20 act', 'on 14:50 T lengths'),
      'Bowl T is violet (7/2), over orange.',
    ],
    [
      'all over',
      toned('top orange, sides red', '20 toner 7/2 + 20 act', 'on 14:50 T'),
      'Bowl T is violet (7/2), over orange.',
    ],
    ['the run’s own place', toned('A orange', '20 toner 7/2 + 20 act'), 'Bowl T is violet (7/2), over orange.'],
  ])('fires at %s', (_, text, message) => {
    expect(said(text)).toContain(`fix tone-wrong-opposite: ${message}`);
  });

  test('goes by the start where nothing is lightened on the day', () => {
    const lines = ['bowl T 20 toner 8/2 + 20 act', 'place T lengths'];
    const refreshed = (...more: string[]): string => notes(['history 2025-03 lightener lengths'], [...more, ...lines]);
    expect(ours(refreshed('start lengths orange'))).toEqual(['tone-wrong-opposite']);
    expect(ours(refreshed('start lengths red to orange'))).toEqual(['tone-wrong-opposite']);
    expect(ours(refreshed('start lengths 9 yellow'))).toEqual([]);
    expect(ours(refreshed('start top 9 yellow, lengths orange'))).toEqual(['tone-wrong-opposite']);
    expect(ours(refreshed('start roots orange'))).toEqual([]);
    expect(ours(refreshed('start lengths 7 warm'))).toEqual([]);
    expect(ours(visit('start lengths orange', ...lines))).toEqual([]);
  });

  test('does not go by what is lightened after the toner, nor by a bowl that is not mixed', () => {
    const text = visit(
      'bowl T 20 toner 8/2 + 20 act',
      'bowl A 40 clay + 80 dev-6',
      'on 14:00 T top',
      'off 14:10 T',
      'on 14:20 A top',
      'check 14:30 A orange',
      'off 14:50 A',
      'on 13:00 X top',
      'check 13:10 X red',
      'off 13:20 X',
    );
    expect(ours(text)).not.toContain('tone-wrong-opposite');
  });

  test('fires at blue over yellow, and not where any place is for blue', () => {
    const blue = '20 toner 9/8 + 20 act';
    expect(said(toned('top yellow', blue))).toEqual([
      'fix tone-wrong-opposite: Bowl T is blue (9/8), over yellow, and makes green with it.',
    ]);
    expect(ours(toned('top gold', blue))).toEqual([]);
    expect(ours(toned('top yellow, sides orange', blue, 'on 14:50 T lengths'))).toEqual(['toner-over-dark']);
  });

  test('minds ash over pale yellow, and leaves it over yellow', () => {
    const ash = '30 toner 10/1 + 5 toner 10/2 + 35 act';
    expect(said(toned('top pale-yellow', ash))).toEqual([
      'mind tone-wrong-opposite: Bowl T is blue and violet (10/1, 10/2), over pale-yellow, and makes green with it.',
    ]);
    expect(ours(toned('top yellow', ash))).toEqual([]);
  });

  test.each([
    ['ash with violet', toned('top pale-yellow', '20 toner 9/12 + 20 act')],
    ['as much violet as blue', toned('top pale-yellow', '20 toner 9/8 + 20 toner 9/2 + 40 act')],
    ['ash with gold', toned('top pale-yellow', '20 toner 9/13 + 20 act')],
    ['a little ash in a natural', toned('top pale-yellow', '20 toner 9/01 + 20 act')],
    ['white hair', toned('top white', '20 toner 9/8 + 20 act')],
  ])('is silent at %s over the end of lift', (_, text) => {
    expect(ours(text)).not.toContain('tone-wrong-opposite');
  });

  test('says so louder where the client is to have no green', () => {
    const lines = (avoid: string): string =>
      notes(
        ['history 2025-03 lightener lengths', `avoid ${avoid}`],
        ['start lengths yellow', 'bowl T 20 toner 10/1 + 20 act', 'place T lengths'],
      );
    expect(said(lines('"green cast"'))).toEqual([
      'fix tone-wrong-opposite: Bowl T is blue (10/1), over yellow, and makes green with it, which is on the `avoid` line.',
    ]);
    expect(said(lines('pink'))).toEqual([]);
  });

  test('says which colour answers', () => {
    const { findings } = findIn(toned('top red-orange', '20 toner 6/2 + 20 act'));
    expect(findings.map(({ expected }) => expected)).toContain(
      'Red-orange is answered by blue and green (the trade’s opposite pairs).',
    );
  });
});

describe('toner-over-dark', () => {
  test.each([
    ['two depths', toned('top gold', '20 toner 9/1 + 20 act')],
    ['no depth', toned('top orange', '20 toner clear + 20 act')],
    [
      'a depth typed beside the stage',
      notes(['history lightener'], ['start lengths 8 gold', 'bowl T 20 toner 10/1 + 20 act', 'place T lengths']),
    ],
  ])('is silent at %s', (_, text) => {
    expect(ours(text)).toEqual([]);
  });

  test('fires at more, and leaves the wrong opposite to its own rule', () => {
    expect(said(toned('top orange, sides gold', '20 toner 10/1 + 20 act', 'on 14:50 T'))).toEqual([
      'fix toner-over-dark: Bowl T is depth 10 (10/1), over orange at the top.',
    ]);
    expect(ours(toned('top orange', '20 toner 10/2 + 20 act'))).toEqual(['tone-wrong-opposite']);
  });
});

describe('filler-missing', () => {
  const before = ['history 2025-03 lightener lengths'];
  const dark = '30 gloss 5/1 + 60 act';
  test.each([
    ['two depths darker', before, ['start lengths 7', `bowl A ${dark}`]],
    ['hair that was not lightened', [], ['start lengths 9', `bowl A ${dark}`]],
    ['the roots', before, ['start roots 9', `bowl A ${dark}`]],
    ['another place', before, ['start lengths 9', `bowl A ${dark}`, 'place A roots']],
    ['a filler first', before, ['start lengths 9', 'bowl F 20 fill 8/3', `bowl A ${dark}`]],
    ['a warm shade', before, ['start lengths 9', 'bowl A 30 gloss 5/3 + 60 act']],
    ['a toner', before, ['start lengths 9', 'bowl A 30 toner 6/1 + 30 act']],
    ['no start', before, [`bowl A ${dark}`]],
    ['a bowl without a depth', before, ['start lengths 9', 'bowl A 30 clay + 60 dev-6', 'bowl B 40 act']],
  ])('is silent at %s', (_, client, lines) => {
    expect(ours(notes(client, lines))).not.toContain('filler-missing');
  });

  test.each([
    ['by its history', before, ['start lengths 9', `bowl A ${dark}`]],
    [
      'all over, then coloured with permanent colour',
      ['history lightener'],
      ['start 9', 'bowl A 30 cream 5/1 + 45 dev-6'],
    ],
  ])('fires over hair lightened %s', (_, client, lines) => {
    expect(said(notes(client, lines))).toContain(
      'fix filler-missing: Bowl A takes lightened hair from 9 to 5 with 5/1, and no warmth.',
    );
  });

  const of = (client: readonly string[], ...lines: string[]): string[] =>
    said(notes(client, lines)).filter((line) => line.includes('filler-missing'));

  test('a neutral shade three depths darker is a mind, since a cool one or four depths are surer to turn', () => {
    expect(of(before, 'start lengths 9', 'bowl A 30 gloss 6/0 + 60 act')).toEqual([
      'mind filler-missing: Bowl A takes lightened hair from 9 to 6 with 6/0, and no warmth.',
    ]);
    expect(of(before, 'start lengths 9', 'bowl A 30 gloss 5/0 + 60 act')).toEqual([
      'fix filler-missing: Bowl A takes lightened hair from 9 to 5 with 5/0, and no warmth.',
    ]);
  });

  test('a client who arrives lighter than her own was lightened, whoever did it; white hair was not', () => {
    const lines = ['start lengths 10 yellow', `bowl A ${dark}`];
    // 10 is three depths over her own 7, and only one over 9.
    expect(of(['natural 7'], ...lines)).toEqual([
      'fix filler-missing: Bowl A takes lightened hair from 10 to 5 with 5/1, and no warmth.',
    ]);
    expect(of(['natural 9'], ...lines)).toEqual([]);
    expect(of(['natural 7', 'grey 80% all'], ...lines)).toEqual([]);
  });

  test('a splash of gold fills nothing, a fifth of the bowl does', () => {
    // 2 of 32 g is a sixteenth; 8 of 38 g is more than a fifth.
    expect(of(before, 'start lengths 9', 'bowl A 30 gloss 5/1 + 2 gloss 5/3 + 64 act')).toEqual([
      'fix filler-missing: Bowl A takes lightened hair from 9 to 5 with 5/1, 5/3, and too little warmth in it.',
    ]);
    expect(of(before, 'start lengths 9', 'bowl A 30 gloss 5/1 + 8 gloss 5/3 + 76 act')).toEqual([]);
  });

  test('warmth elsewhere on the head fills nothing', () => {
    const roots = 'bowl R 30 gloss 5/3 + 60 act';
    expect(of(before, 'start lengths 9', `bowl A ${dark}`, 'place A lengths', roots, 'place R roots')).toHaveLength(1);
    expect(of(before, 'start lengths 9', `bowl A ${dark}`, 'place A lengths', roots, 'place R lengths')).toEqual([]);
  });

  test('lowlights with blonde left between are none, unless they turned', () => {
    const woven = [`bowl A ${dark}`, 'place A lengths weave x14 off-scalp 1cm foil'];
    expect(of(before, 'start lengths 10', ...woven)).toEqual([]);
    expect(of(before, 'start lengths 10', ...woven, 'result lengths 6 green')).toHaveLength(1);
    expect(of(before, 'start lengths 10', `bowl A ${dark}`, 'place A lengths apply')).toHaveLength(1);
  });
});

test('filler-missing is to be put right where it is noted to have turned', () => {
  const first = ['start lengths 9', 'bowl A 30 gloss 5/1 + 60 act'];
  const turned = (result: string, ...later: string[]): string[] =>
    said(notes(['history 2025-03 lightener lengths'], [...first, `result ${result}`], later)).filter((line) =>
      line.includes('filler'),
    );
  const message = 'Bowl A takes lightened hair from 9 to 5 with 5/1, and no warmth';
  expect(turned('lengths 5 khaki')).toEqual([`fix filler-missing: ${message}; it came out “khaki”.`]);
  expect(turned('lengths 5', 'about 2026-01-10 ends "went greenish in a week"')).toEqual([
    `fix filler-missing: ${message}; it came out “greenish”.`,
  ]);
  expect(turned('lengths 5 even "no green anywhere"')).toEqual([`mind filler-missing: ${message}.`]);
  expect(turned('lengths 5', 'about 2026-01-09 "green"')).toEqual([`fix filler-missing: ${message}.`]);
});

describe('tone-against-want', () => {
  const warm = 'bowl A 30 gloss 8/3 + 60 act';
  test.each([
    ['the tone wanted', ['want lengths 8 gold', warm]],
    ['no tone wanted', ['want lengths 8', warm]],
    ['a stage as a tone', ['want lengths 8 yellow', warm]],
    ['tones of both sides wanted', ['want lengths 8 gold violet', warm]],
    ['a word that is no tone', ['want lengths 8 shiny', warm]],
    ['neutral wanted', ['want lengths 8 beige', warm]],
    ['nothing put on there', ['want lengths 8 ash', warm, 'place A roots']],
    ['a blend to both sides', ['want lengths 8 ash', 'bowl A 20 gloss 8/3 + 10 gloss 8/1 + 60 act']],
    ['a natural shade', ['want lengths 8 ash', 'bowl A 30 gloss 8/0 + 60 act']],
    ['another bowl that leans right', ['want lengths 8 ash', warm, 'bowl B 30 gloss 8/1 + 60 act']],
    ['a filler first', ['want lengths 6 ash', 'bowl F 20 fill 8/3', 'bowl B 30 gloss 6/3 + 60 act']],
    ['lightener only', ['want lengths 8 ash', 'bowl A 30 clay + 60 dev-6']],
  ])('is silent at %s', (_, lines) => {
    expect(ours(visit(...lines))).not.toContain('tone-against-want');
  });

  test.each([
    [['want lengths 8 ash', warm], 'Lengths: wanted cool; bowl A is warm (8/3).'],
    [['want 8 copper', 'bowl B 30 gloss 8/1 + 60 act'], 'The hair: wanted warm; bowl B is cool (8/1).'],
    [['want top yellow', 'bowl B 30 gloss 8/1 + 60 act', 'place B top'], 'Top: wanted warm; bowl B is cool (8/1).'],
  ])('fires at %j', (lines, message) => {
    expect(said(visit(...lines))).toEqual([`mind tone-against-want: ${message}`]);
  });
});

describe('direct-dye-on-dark', () => {
  const teal = 'bowl N 30 neon teal + 10 neon clear';
  test.each([
    ['depth 6½', [], ['start lengths 6½', teal]],
    ['a stage of lift', [], ['start lengths orange', teal]],
    ['no start', [], [teal]],
    ['brown', [], ['start lengths 4', 'bowl N 30 neon brown']],
    ['clear', [], ['start lengths 4', 'bowl N 30 neon clear']],
    ['other colour', [], ['start lengths 4', 'bowl A 30 gloss 4/1 + 60 act']],
    [
      'hair that was lightened',
      ['history 2025-02 lightener lengths'],
      ['start lengths 5', teal, 'place N ends, lengths'],
    ],
    ['hair lightened all over', ['history lightener'], ['start lengths 5', teal]],
    ['hair lightened on the day', [], ['start lengths 4', 'bowl A 30 clay + 60 dev-6', teal]],
    ['a result that shows it', [], ['start lengths 4', 'bowl N 30 neon violet', 'result lengths 4 violet']],
  ])('is silent over %s', (_, client, lines) => {
    expect(ours(notes(client, lines))).not.toContain('direct-dye-on-dark');
  });

  test.each([
    ['its place', [], ['start lengths 4', teal, 'place N lengths']],
    ['her nature', ['natural 4', 'history 2025-02 lightener ends'], [teal, 'place N top', 'result top 4 shiny']],
  ])('fires by %s', (_, client, lines) => {
    expect(said(notes(client, lines))).toEqual([
      'mind direct-dye-on-dark: Bowl N is neon teal, on depth 4 that was not lightened.',
    ]);
  });
});
