import { describe, expect, test } from 'vitest';
import { findIn, rulesIn, saidIn, textOf } from './compile.ts';

const SHELF = `
  product dev-3 "Cream developer" developer 3%
  product dev-6 "Cream developer" developer 6%
  product dev-9 "Cream developer" developer 9%
  product dev-12 "Cream developer" developer 12%
  product dev-18 "Strong developer" developer 18%
  product clay "Peregrine clay" lightener
  product soft-clay "Soft clay" lightener
    lift 6% 3
  product unpick "Unpick" remover
    mix none
  range cream "Larkfield cream" permanent
    lift 9% 2-3, 3% 0-1, 6% 1-2
    shades clear
  range plain "Plain cream" permanent
  range high "Larkfield high" high-lift
  range claims "High with a claim" high-lift
    lift 12% 4-5
  range gloss "Tidewater gloss" demi`;

const notes = (client: readonly string[], ...visits: (readonly string[])[]): string =>
  [
    textOf(SHELF),
    'client wren-abbott "Wren Abbott"',
    'test skin 2025-12-01 11:00 cream, plain, high, claims, gloss read 2025-12-03 11:30 clear',
    ...client,
    ...visits.flatMap((lines, index) => [`visit 2026-0${index + 1}-10 wren-abbott`, ...lines]),
    '',
  ].join('\n');

const visit = (...lines: string[]): string => notes([], lines);

const OURS = [
  'lift-beyond-claim',
  'lift-beyond-guide',
  'high-lift-on-dark',
  'darker-after-lightening',
  'stage-goes-back',
  'colour-over-colour',
];

const ours = (text: string): string[] => rulesIn(text).filter((rule) => OURS.includes(rule));

const said = (text: string): string[] => saidIn(text).filter((line) => OURS.some((rule) => line.includes(rule)));

describe('lift-beyond-claim', () => {
  test.each([
    [
      'at the far end of the claim',
      ['start roots 4', 'want roots 6', 'bowl A 40 cream 6/0 + 60 dev-6', 'place A roots'],
    ],
    ['half a depth beyond', ['start roots 4½', 'want roots 7', 'bowl A 40 cream 7/0 + 60 dev-6', 'place A roots']],
    ['a shade a depth beyond', ['start roots 4', 'bowl A 40 cream 7/0 + 60 dev-6', 'place A roots']],
    [
      'a strength above every claim',
      ['start roots 4', 'want roots 9', 'bowl A 40 cream 9/0 + 60 dev-12', 'place A roots'],
    ],
    [
      'a result within the claim, and no more wanted',
      ['start roots 4', 'want roots 6', 'bowl A 40 cream 9/0 + 60 dev-6', 'result roots 6'],
    ],
    ['no start', ['want roots 9', 'bowl A 40 cream 9/0 + 60 dev-6', 'place A roots']],
    ['no developer', ['start roots 4', 'want roots 9', 'bowl A 40 cream 9/0', 'place A roots']],
    ['nothing to reach', ['start roots 4', 'bowl A 40 cream clear + 60 dev-6', 'place A roots']],
    ['a number of the maker’s own', ['start roots 4', 'bowl A 40 cream 77/0 + 60 dev-6', 'place A roots']],
    ['a shade that lightens nothing', ['start roots 4', 'want roots 9', 'bowl A 40 gloss 9/0 + 60 dev-6']],
    [
      'lightener before it',
      ['start roots 4', 'want roots 9', 'bowl L 30 clay + 60 dev-6', 'bowl A 40 cream 9/0 + 60 dev-6'],
    ],
    ['a remover before it', ['start all 4', 'want all 9', 'bowl L 30 unpick', 'bowl A 40 cream 9/0 + 60 dev-6']],
    [
      'another place',
      ['start roots 4, lengths 8', 'want roots 9', 'bowl A 40 cream 9/0 + 60 dev-6', 'place A lengths'],
    ],
    ['lengths that nothing is said of', ['start roots 4', 'bowl A 40 cream 9/0 + 60 dev-6', 'place A lengths, ends']],
    ['a bowl that was left', ['start roots 4', 'want roots 9', 'bowl A 40 cream 9/0 + 60 dev-6', 'left A 100 binned']],
  ])('is silent at %s', (_, lines) => {
    expect(ours(visit(...lines))).not.toContain('lift-beyond-claim');
  });

  test.each([
    [
      'what is wanted',
      ['start roots 4', 'want roots 9', 'bowl A 40 cream 9/0 + 60 dev-6', 'place A roots'],
      'fix lift-beyond-claim: Roots: start 4, wanted 9, 5 depths apart, with cream and 6 %.',
    ],
    [
      'what is noted to have come of it',
      ['start roots 4', 'want roots 5', 'bowl A 40 cream 9/0 + 60 dev-6', 'result roots 8.5'],
      'fix lift-beyond-claim: Roots: start 4, result 8.5, 4.5 depths apart, with cream and 6 %.',
    ],
    [
      'what was wanted, though the result is honest about it',
      ['start roots 4', 'want roots 9', 'bowl A 40 cream 9/0 + 60 dev-6', 'result roots 6'],
      'mind lift-beyond-claim: Roots: start 4, wanted 9, 5 depths apart, with cream and 6 %; the result is 6.',
    ],
    [
      'its shade',
      ['start roots 3 to 4, lengths 8', 'bowl A 20 cream 8/0 + 20 cream 9/0 + 60 dev-6', 'place A roots'],
      'mind lift-beyond-claim: Roots: start 3, shade 8.5, 5.5 depths apart, with cream and 6 %.',
    ],
    [
      'a shade that is not weighed yet',
      ['start roots 4', 'bowl A cream 8/0 + dev-6', 'place A roots'],
      'mind lift-beyond-claim: Roots: start 4, shade 8, 4 depths apart, with cream and 6 %.',
    ],
    [
      'a shade of figures and letters',
      ['start roots 4', 'bowl A 40 cream 8,5N + 60 dev-6', 'place A roots'],
      'mind lift-beyond-claim: Roots: start 4, shade 8.5, 4.5 depths apart, with cream and 6 %.',
    ],
    [
      'the claim of the next stronger developer',
      ['start 4', 'want 9', 'bowl A 40 cream 9/0 + 60 of dev-6', 'bowl B 40 cream 9/0 + 5% from dev-3 dev-6 1:1.5'],
      'fix lift-beyond-claim: The hair: start 4, wanted 9, 5 depths apart, with cream and 5 %.',
    ],
    [
      'a lightener that claims its lift',
      ['start top 4', 'want top 9', 'bowl A 40 soft-clay + 80 dev-6', 'place A top'],
      'fix lift-beyond-claim: Top: start 4, wanted 9, 5 depths apart, with soft-clay and 6 %.',
    ],
  ])('fires at %s', (_, lines, message) => {
    expect(said(visit(...lines))).toContain(message);
  });

  test('takes the roots, then nature, where the start says nothing of the place', () => {
    const lines = ['want hairline 9', 'bowl A 40 cream 9/0 + 60 dev-6', 'place A hairline'];
    expect(said(visit('start roots 4', ...lines))).toHaveLength(1);
    expect(said(notes(['natural 5'], lines))).toEqual([
      'fix lift-beyond-claim: The hair: start 5, wanted 9, 4 depths apart, with cream and 6 %.',
    ]);
    expect(said(notes(['natural 5 warm'], ['want warm', ...lines.slice(1)]))).toHaveLength(1);
  });

  test('says it once a bowl', () => {
    expect(said(visit('start roots 4, lengths 3', 'want all 9', 'bowl A 40 cream 9/0 + 60 dev-6'))).toHaveLength(1);
  });

  test('cites the claim, a single figure as it stands', () => {
    const { findings } = findIn(visit('start top 4', 'want top 9', 'bowl A 40 soft-clay + 80 dev-6'));
    expect(findings.map(({ expected }) => expected)).toContain(
      'Soft clay claims 3 depths with 6 % (its lift line, example.bowl:8).',
    );
  });

  test('is outweighed by what this hair did before', () => {
    const lines = ['start roots 4', 'bowl A 40 cream 9/0 + 60 dev-6', 'place A roots'];
    const did = notes([], [...lines, 'result roots 8'], [...lines, 'want roots 8']);
    expect(said(did)).toEqual(['fix lift-beyond-claim: Roots: start 4, result 8, 4 depths apart, with cream and 6 %.']);
    const less = notes([], [...lines, 'result roots 6'], [...lines, 'want roots 8']);
    expect(said(less)).toEqual([
      'fix lift-beyond-claim: Roots: start 4, wanted 8, 4 depths apart, with cream and 6 %.',
    ]);
    const other = notes(
      [],
      ['start roots 4', 'bowl A 40 plain 8/0 + 60 dev-6', 'result roots 8'],
      [...lines, 'want roots 8'],
    );
    expect(ours(other)).toEqual(['lift-beyond-guide', 'lift-beyond-claim']);
    const stronger = notes(
      [],
      ['start roots 4', 'bowl A 40 cream 8/0 + 60 dev-12', 'result roots 8'],
      [...lines, 'want roots 8'],
    );
    expect(ours(stronger)).toEqual(['lift-beyond-claim']);
  });
});

describe('lift-beyond-guide', () => {
  test.each([
    ['a depth beyond the guide', ['start roots 4', 'want roots 7', 'bowl A 40 plain 7/0 + 60 dev-6']],
    ['high-lift, which is given one more', ['start roots 6', 'want roots 10', 'bowl A 40 high 12/1 + 80 dev-9']],
    ['a strength above the guide', ['start roots 4', 'want roots 10', 'bowl A 40 plain 10/0 + 60 dev-18']],
    ['lightener', ['start roots 4', 'want roots 10', 'bowl A 40 clay + 60 dev-6']],
  ])('is silent at %s', (_, lines) => {
    expect(ours(visit(...lines))).not.toContain('lift-beyond-guide');
  });

  test('fires beyond that, at what is to be reached or at the shade', () => {
    expect(said(visit('start roots 4', 'want roots 8', 'bowl A 40 plain 7/0 + 60 dev-6'))).toEqual([
      'mind lift-beyond-guide: Roots: from 4 to 8, 4 depths, with plain and 6 %.',
    ]);
    const { findings } = findIn(visit('start roots 4, lengths 3', 'bowl A 40 plain 9/0 + 60 dev-6'));
    expect(findings.map(({ rule, place }) => [rule, place.line])).toEqual([['lift-beyond-guide', 22]]);
    expect(said(visit('start roots 6', 'bowl A 40 high 12/1 + 80 dev-3'))).toEqual([
      'mind lift-beyond-guide: Roots: from 6 to 10, 4 depths, with high and 3 %.',
    ]);
  });
});

test('lift-beyond-guide names the result where it fell short of what was wanted', () => {
  expect(said(visit('start roots 4', 'want roots 8', 'bowl A 40 plain 7/0 + 60 dev-6', 'result roots 5'))).toEqual([
    'mind lift-beyond-guide: Roots: from 4 to 8, 4 depths, with plain and 6 %; the result is 5.',
  ]);
});

describe('high-lift-on-dark', () => {
  test.each([
    ['depth 6', ['start roots 6', 'bowl A 30 high 10/1 + 60 dev-12']],
    ['a range that claims its lift', ['start roots 5', 'bowl A 30 claims 10/1 + 60 dev-12']],
    ['no start', ['bowl A 30 high 10/1 + 60 dev-12']],
  ])('is silent at %s', (_, lines) => {
    expect(ours(visit(...lines))).toEqual([]);
  });

  test('fires below', () => {
    expect(said(visit('start roots 7, top 5', 'bowl A 30 high 10/1 + 60 dev-12'))).toEqual([
      'mind high-lift-on-dark: Bowl A is high-lift; the depth it goes on is 5.',
    ]);
  });
});

describe('darker-after-lightening', () => {
  const start = ['start top 6, sides 6', 'bowl A 40 clay + 80 dev-6'];
  test.each([
    ['half a depth, which is the eye', ['result top 5½']],
    ['a place that has no start', ['result back 4']],
    ['colour that went on as well', ['bowl B 20 gloss 4/0 + 40 dev-3', 'result top 4']],
  ])('is silent at %s', (_, lines) => {
    expect(ours(visit(...start, ...lines))).toEqual([]);
  });

  test('is silent where nothing was lightened', () => {
    expect(ours(visit('start top 6', 'result top 4'))).toEqual([]);
    expect(ours(visit('start top 6', 'bowl A 20 gloss 4/0 + 40 dev-3', 'result top 4'))).toEqual([]);
  });

  test('fires a depth darker', () => {
    expect(said(visit(...start, 'result sides 8, top 5'))).toEqual([
      'fix darker-after-lightening: Top: from 6 to 5, and lightener is all that was put on.',
    ]);
  });
});

describe('stage-goes-back', () => {
  const run = (...checks: string[]): string =>
    visit('bowl A 40 clay + 80 dev-6', 'on 14:00 A', ...checks, 'off 14:40 A');

  test.each([
    ['one stage back', ['check 14:10 A gold', 'check 14:20 A orange']],
    ['a span that reaches as far', ['check 14:10 A gold', 'check 14:20 A red to orange']],
    ['two places', ['check 14:10 top gold', 'check 14:20 sides red']],
    ['a look without a time', ['check 14:10 A gold', 'check A red']],
    ['a look without a stage', ['check 14:10 A gold', 'check 14:20 A 4 warm']],
  ])('is silent at %s', (_, checks) => {
    expect(ours(run(...checks))).toEqual([]);
  });

  test('fires two stages back, whatever the order of the lines, once a line', () => {
    expect(said(run('check 14:20 A orange to red', 'check 14:10 top yellow, A gold'))).toEqual([]);
    expect(
      said(run('check 14:20 top red, sides red', 'check 14:10 top gold, sides gold', 'check 14:30 top yellow')),
    ).toEqual(['fix stage-goes-back: Top: gold at 14:10, red at 14:20.']);
    expect(said(run('check 14:10 yellow', 'check 14:20 orange'))).toEqual([
      'fix stage-goes-back: The hair: yellow at 14:10, orange at 14:20.',
    ]);
  });

  test('leaves out a look at two bowls, a toner, and a bowl that is not mixed', () => {
    const two = visit(
      'bowl A 40 clay + 80 dev-6',
      'bowl B 40 clay + 80 dev-6',
      'on 14:00 A top',
      'on 14:05 B top',
      'check 14:10 top gold',
      'check 14:20 A red',
      'off 14:40 A+B',
    );
    expect(ours(two)).toEqual([]);
    const toned = ['on 14:00 T', 'check 14:10 T yellow', 'check 14:20 T orange', 'off 14:30 T'];
    expect(ours(visit('bowl T 20 gloss 9/1 + 40 dev-3', ...toned))).toEqual([]);
    expect(ours(visit(...toned))).toEqual([]);
  });
});

describe('colour-over-colour', () => {
  const tint = ['start roots 4, lengths 4', 'bowl A 40 cream 6/3 + 60 dev-9'];
  const boxed = 'history 2025-05 box-colour lengths';
  test.each([
    ['natural lengths', [], tint],
    ['a colour that is yet to come', ['history 2026-05 box-colour'], tint],
    ['another history', ['history 2025-05 perm lengths'], tint],
    ['lengths lightened since', [boxed, 'history 2025-06 lightener'], tint],
    ['her natural lengths', [boxed], ['start lengths 4 natural', 'bowl A 40 cream 6/3 + 60 dev-9']],
    ['the roots', [boxed], [...tint, 'place A roots']],
    ['a depth that is little lighter', [boxed], ['start lengths 5', 'bowl A 40 cream 6/3 + 60 dev-9']],
    ['demi colour', [boxed], ['start lengths 4', 'bowl A 40 gloss 6/3 + 60 dev-3']],
    ['a shade without a depth', [boxed], ['start lengths 4', 'bowl A 40 cream clear + 60 dev-9']],
    ['a remover first', [boxed], [...tint, 'bowl R 40 unpick']],
  ])('is silent over %s', (_, client, lines) => {
    expect(ours(notes(client, lines))).not.toContain('colour-over-colour');
  });

  test('fires over history and over an earlier visit', () => {
    const message = 'mind colour-over-colour: Bowl A is depth 6; lengths, coloured before, start at 4.';
    expect(said(notes([boxed], tint))).toEqual([message]);
    expect(said(notes(['history salon-colour'], [...tint, 'bowl B 20 gloss 7/0 + 40 dev-3']))).toEqual([message]);
    const before = ['bowl A 40 cream 4/0 + 60 dev-6', 'place A lengths'];
    expect(said(notes([], before, tint))).toEqual([message]);
  });

  test('is to be put right where the notes say that it did not lift', () => {
    expect(said(notes([boxed], [...tint, 'result roots 6, lengths 4 warm']))).toContain(
      'fix colour-over-colour: Bowl A is depth 6; lengths, coloured before, start at 4; it came out “warm”.',
    );
    expect(said(notes([boxed], [...tint, 'result lengths 5 even "not patchy"']))[0]).toMatch(/^mind/);
  });

  test('stands before what the lift line claims', () => {
    const lines = ['start lengths 4', 'want lengths 9', 'bowl A 40 cream 9/3 + 60 dev-6'];
    expect(ours(notes([boxed], lines))).toEqual(['colour-over-colour']);
    expect(ours(notes([], lines))).toEqual(['lift-beyond-claim']);
  });
});
