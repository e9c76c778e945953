import { describe, expect, test } from 'vitest';
import adverseTest from '../../src/rules/condition/adverse-test.ts';
import onRelaxed from '../../src/rules/condition/lightener-on-relaxed.ts';
import removerOnDirect from '../../src/rules/condition/remover-on-direct-dye.ts';
import removerUnwashed from '../../src/rules/condition/remover-unwashed.ts';
import strandMissing from '../../src/rules/condition/strand-test-missing.ts';
import strongOnWeak from '../../src/rules/condition/strong-on-weak.ts';
import { foundBy, notesOf, saidBy, visitOf } from './one-rule.ts';

const MIX = 'bowl A 40 clay + 80 dev-6';

describe('lightener-on-relaxed', () => {
  const said = (client: readonly string[], ...lines: readonly string[]): string[] =>
    saidBy(onRelaxed, notesOf(client, visitOf(...lines)));

  test.each([
    ['without a relaxer', ['history 2026-03 perm'], [MIX]],
    ['before the relaxer', ['history 2026-10 relaxer'], [MIX]],
    ['on the new growth', ['history 2026-03 relaxer lengths'], [MIX, 'place A roots']],
    ['at colour', ['history 2026-03 relaxer'], ['bowl A 40 gloss 6/0 + 80 dev-6']],
  ])('is silent %s', (_, client, lines) => {
    expect(said(client, ...lines)).toEqual([]);
  });

  test('asks for a strand, and minds it with one', () => {
    expect(said(['history relaxer'], MIX)).toEqual([
      'fix: Bowl A lightens hair with a relaxer on file, and no strand or stretch test since.',
    ]);
    const relaxed = ['history 2026-03 relaxer lengths'];
    expect(said(relaxed, 'test strand clay 20min yellow', MIX, 'place A ends')).toEqual([
      'mind: Bowl A lightens hair with a relaxer on file of 2026-03.',
    ]);
    expect(said(relaxed, 'test stretch breaks', MIX)).toHaveLength(1);
    expect(said([...relaxed, 'test strand 2026-01-05 clay 20min yellow'], MIX)[0]).toMatch(/^fix/);
    expect(said([...relaxed, 'test porosity 2026-04-05 high'], 'test skin cream', MIX)[0]).toMatch(/^fix/);
  });

  test('goes by the newest, and within two weeks no strand is enough', () => {
    const strand = 'test strand clay 20min yellow';
    expect(
      said(['history 2020-01 relaxer', 'test strand 2021-01-05 clay 20min yellow', 'history 2026-03 relaxer'], MIX),
    ).toEqual(['fix: Bowl A lightens hair with a relaxer on file of 2026-03, and no strand or stretch test since.']);
    expect(said(['history 2026-08-22 relaxer', 'history 2020 relaxer'], strand, MIX)).toEqual([
      'fix: Bowl A lightens hair with a relaxer on file, 13 days before (2026-08-22).',
    ]);
    const at = (when: string): string[] => said([`history ${when} relaxer`], strand, MIX);
    const lightens = 'fix: Bowl A lightens hair with a relaxer on file';
    expect(at('2026-09-04')).toEqual([`${lightens}, the same day (2026-09-04).`]);
    expect(at('2026-09-03')).toEqual([`${lightens}, 1 day before (2026-09-03).`]);
    expect(at('2026-09')).toEqual([`${lightens}, at most 3 days before (2026-09).`]);
    expect(said(['history 2026-08-21 relaxer'], strand, MIX)).toEqual([
      'mind: Bowl A lightens hair with a relaxer on file of 2026-08-21.',
    ]);
  });

  test('of two of one time goes by the first noted that the bowl meets', () => {
    const both = ['history 2026-03 relaxer roots', 'history 2026-03 relaxer lengths'];
    expect(said(both, MIX, 'place A lengths')).toEqual([
      'fix: Bowl A lightens hair with a relaxer on file of 2026-03, and no strand or stretch test since.',
    ]);
    const [found] = foundBy(onRelaxed, notesOf(both, visitOf(MIX)));
    const [roots] = foundBy(onRelaxed, notesOf(both, visitOf(MIX, 'place A roots')));
    expect(found?.also).toEqual(roots?.also);
  });

  test('counts high-lift colour', () => {
    expect(said(['history 2026-03 relaxer'], 'bowl A 40 high 10/1 + 80 dev-9')).toHaveLength(1);
  });
});

describe('adverse-test', () => {
  const said = (...lines: readonly string[]): string[] => saidBy(adverseTest, notesOf([], visitOf(...lines)));

  test.each([
    ['at a good test', ['test stretch springs-back', MIX]],
    ['at a result that is neither', ['test strand clay 20min yellow', MIX]],
    ['where nothing was seen', ['test strand clay 20min', MIX]],
    ['at another kind of test', ['test porosity rough', 'test metal reaction', MIX]],
    ['elsewhere', ['test stretch ends breaks', MIX, 'place A roots']],
    ['at colour', ['test stretch breaks', 'bowl A 40 gloss 6/0 + 80 dev-6']],
    ['of another product', ['test strand unpick 20min breaks', MIX]],
    ['once a later one is good', ['test stretch 2026-09-01 breaks', 'test stretch springs-back', MIX]],
    ['at a remark that denies it', ['test stretch "not gummy at all"', MIX]],
    ['at a result that did not break', ['test strand clay 20min yellow "did not break"', MIX]],
    ['at a decision and its reason', ['test strand not-needed "broke the last one by hand"', MIX]],
    [
      'once a later one is good, in quotation marks',
      ['test strand 2026-09-01 clay broke', 'test strand clay "held"', MIX],
    ],
    ['half a year later', ['test stretch 2026-02-01 breaks', MIX]],
  ])('is silent %s', (_, lines) => {
    expect(said(...lines)).toEqual([]);
  });

  test.each([
    ['test stretch breaks', 'stretch', '2026-09-04', 'breaks'],
    ['test strand 2026-08-20 clay 20min gummy', 'strand', '2026-08-20', 'gummy'],
    ['test strand clay 20min not clear', 'strand', '2026-09-04', 'not clear'],
    ['test stretch "ends stretch and stay"', 'stretch', '2026-09-04', 'stretch and stay'],
    ['test strand clay 20min red "stretched like gum and broke"', 'strand', '2026-09-04', 'stretched like gum'],
    ['test strand clay 20min red snaps', 'strand', '2026-09-04', 'snaps'],
    ['test porosity lengths "mushy"', 'porosity', '2026-09-04', 'mushy'],
  ])('stops after %s', (line, kind, day, word) => {
    expect(said(line, MIX)).toEqual([`stop: Bowl A lightens hair whose ${kind} test of ${day} says "${word}".`]);
  });

  test('is not settled by a test of which nothing was seen, and by a remark it is', () => {
    const broke = 'test stretch 2026-09-01 breaks';
    expect(said(broke, 'test stretch not-needed "looks fine"', MIX)).toHaveLength(1);
    expect(said('test strand 2026-09-01 clay breaks', 'test strand clay 20min', MIX)).toHaveLength(1);
    expect(said(broke, 'test stretch "good as new"', MIX)).toEqual([]);
  });

  test('a result without the day of its test says nothing', () => {
    expect(saidBy(adverseTest, notesOf(['test stretch breaks'], visitOf(MIX)))).toEqual([]);
  });

  test('counts high-lift colour', () => {
    expect(said('test stretch breaks', 'bowl H 40 high 10/1 + 80 dev-9')).toHaveLength(1);
  });

  test('is not settled by a test elsewhere', () => {
    expect(said('test stretch 2026-09-01 ends breaks', 'test stretch roots springs-back', MIX)).toHaveLength(1);
  });
});

describe('strong-on-weak', () => {
  const STRONG = 'bowl A 40 clay + 80 dev-9';
  const said = (client: readonly string[], ...lines: readonly string[]): string[] =>
    saidBy(strongOnWeak, notesOf(client, visitOf(...lines)));

  test.each([
    ['below 9 %', ['hair fine, porosity high'], [MIX]],
    ['on sound hair', ['hair fine, porosity medium', 'caution pregnant'], ['test porosity low', STRONG]],
    ['elsewhere', ['hair fine, porosity high ends'], [STRONG, 'place A roots']],
    ['at colour', ['hair fine, porosity high'], ['bowl A 40 high 10/1 + 80 dev-9']],
    ['while the strength is not known', ['hair fine, porosity high'], ['bowl A 40 clay']],
    ['after half a year', ['test porosity 2026-01-05 high'], [STRONG]],
    ['after a better test', ['test porosity 2026-08-05 high'], ['test porosity low', STRONG]],
  ])('is silent %s', (_, client, lines) => {
    expect(said(client, ...lines)).toEqual([]);
  });

  test.each([
    [['hair fine, porosity high ends'], [STRONG, 'place A lengths, ends'], 'its porosity is on file as high'],
    [[], ['test porosity high ends', STRONG, 'place A ends'], 'the porosity test of 2026-09-04 says high'],
    [['caution ends gummy'], [STRONG, 'place A ends'], '"ends gummy" is on file'],
    [['hold cream "brittle all over"'], [STRONG, 'place A top'], '"brittle all over" is on file'],
  ])('fires at %s', (client, lines, says) => {
    expect(said(client, ...lines)).toEqual([`fix: Bowl A lightens with 9 %, and ${says}.`]);
  });

  test('passes over a hold that gives no reason', () => {
    expect(said(['hold cream'], STRONG)).toEqual([]);
  });
});

describe('strand-test-missing', () => {
  const said = (client: readonly string[], ...lines: readonly string[]): string[] =>
    saidBy(strandMissing, notesOf(client, visitOf(...lines)));
  const BOX = ['history 2024-05 box-colour lengths'];

  test.each([
    ['with a strand test', BOX, ['test strand clay 20min orange', MIX]],
    ['with one on file', [...BOX, 'test strand 2025-05-01 clay 20min orange'], [MIX]],
    ['on the new growth', BOX, [MIX, 'place A roots']],
    ['over colour of a salon', ['history 2024-05 salon-colour'], [MIX]],
    ['over henna, which has a test of its own', ['history henna'], [MIX]],
    ['before the box', ['history 2026-10 box-colour'], [MIX]],
    ['at colour', BOX, ['bowl A 40 cream 6/0 + 60 dev-6']],
  ])('is silent %s', (_, client, lines) => {
    expect(said(client, ...lines)).toEqual([]);
  });

  test('fires without one, or with one from before', () => {
    const missing = 'fix: Bowl A holds clay, lightener; box-colour is on file and no strand test is noted since.';
    expect(said(BOX, MIX, 'place A ends')).toEqual([missing]);
    expect(said([...BOX, 'test strand 2024-01-01 clay 20min orange'], MIX)).toEqual([missing]);
    expect(said(['history box-colour'], MIX)).toEqual([missing]);
  });

  test('on the day of the box only the visit’s own strand is since', () => {
    const box = 'history 2026-09-01 box-colour';
    const before = 'test strand 2026-09-01 9:00 clay 20min orange';
    expect(said([box, before], MIX)).toHaveLength(1);
    expect(said([box, before.replace('09-01', '09-02')], MIX)).toEqual([]);
    const today = 'history 2026-09-04 box-colour';
    expect(said([today, 'test strand 2026-09-04 9:00 clay 20min orange'], MIX)).toHaveLength(1);
    expect(said([today], 'test strand 9:00 clay 20min orange', MIX)).toEqual([]);
    expect(said(['history 2026-09 box-colour', before], MIX)).toEqual([]);
  });

  test('minds a remover without any', () => {
    expect(said([], 'bowl A 40 unpick')).toEqual(['mind: Bowl A holds unpick, remover; no strand test is noted.']);
    expect(said([], 'test strand unpick 20min orange', 'bowl A 40 unpick')).toEqual([]);
    expect(said(BOX, 'bowl A 40 unpick')[0]).toMatch(/^mind/);
    expect(said([...BOX, 'test strand read clear'], MIX)).toEqual([]);
  });
});

test('strand-test-missing: a strand tried when the foils are on comes too late, and hair that is left out needs none', () => {
  const said = (...lines: readonly string[]): string[] =>
    saidBy(strandMissing, notesOf(['history 2025-10 box-colour lengths, ends "black"'], visitOf(MIX, ...lines)));
  const strand = (time: string): string => `test strand ${time} 2 clay + 4 dev-6 20min red-orange`;
  expect(said('place A lengths', 'on 12:15-12:40 A lengths', strand('12:50'))).toHaveLength(1);
  expect(said('place A lengths', 'on 12:15-12:40 A lengths', strand('11:50'))).toEqual([]);
  expect(said('place A grown weave x14 off-scalp 2cm', 'leave lengths, ends "black"')).toEqual([]);
  expect(said('place A grown weave x14 off-scalp 2cm', 'leave lengths "black"')).toHaveLength(1);
});

describe('strand-test-missing on dark colour', () => {
  const said = (client: readonly string[], ...lines: readonly string[]): string[] =>
    saidBy(strandMissing, notesOf(client, lines));
  const missing = (what: string): string[] => [
    `fix: Bowl A holds clay, lightener; ${what} is on file and no strand test is noted since.`,
  ];

  test.each([
    ['black, three times', 'black'],
    ['zweimal schwarz gefärbt', 'schwarz'],
    ['coloration brun foncé', 'foncé'],
    ['castanho escuro', 'escuro'],
    ['color negro', 'negro'],
    ['3/0 at her old salon', '3/0'],
  ])('reads "%s" of a salon colour', (remark, word) => {
    const client = [`history 2026-06 salon-colour lengths "${remark}"`];
    expect(said(client, ...visitOf(MIX, 'place A lengths'))).toEqual(missing(`salon-colour, "${word}",`));
    expect(said(client, ...visitOf('test strand clay 20min red', MIX, 'place A lengths'))).toEqual([]);
    expect(said(client, ...visitOf(MIX, 'place A roots'))).toEqual([]);
    // Hair of depth 7 and lighter has lost the dark colour already.
    expect(said(client, ...visitOf('start lengths 7', MIX, 'place A lengths'))).toEqual([]);
  });

  test.each(['never black', 'kein schwarz', 'dark blonde, 7/0', 'on 3/10 and 3.5 years ago', 'gold, 7/3'])(
    'reads nothing dark in "%s"',
    (remark) => {
      expect(said([`history 2026-06 salon-colour "${remark}"`], ...visitOf(MIX))).toEqual([]);
    },
  );

  test('goes by the depth at the start, where it is dark and not her own', () => {
    const start = ['start lengths 2', MIX, 'place A lengths'];
    const colour = 'history 2026-06 salon-colour';
    expect(said([colour, 'natural 5'], ...visitOf(...start))).toEqual(missing('salon-colour, depth 2 today,'));
    expect(said([colour, 'natural 2'], ...visitOf(...start))).toEqual([]);
    expect(said(['natural 5'], ...visitOf(...start))).toEqual(missing('depth 2 on hair of natural 5'));
    expect(said(['natural 3'], ...visitOf(...start))).toEqual([]);
    expect(said([], ...visitOf(...start))).toEqual([]);
  });

  test('knows what it put on itself, roots grown down included', () => {
    const dark = ['visit 2026-06-10 wren-abbott', 'bowl B 40 cream 3/0 + 60 dev-6', 'place B roots'];
    expect(said(['natural 6'], ...dark, ...visitOf(MIX, 'place A lengths'))).toEqual(missing('3/0 of 2026-06-10'));
    expect(said(['natural 6'], ...dark, ...visitOf(MIX, 'place A roots'))).toEqual([]);
    expect(said(['natural 4'], ...dark, ...visitOf(MIX, 'place A lengths'))).toEqual([]);
    expect(said(['natural 6', 'hair length crop'], ...dark, ...visitOf(MIX))).toHaveLength(1);
    const old = dark.map((line) => line.replace('2026-06', '2026-01'));
    // 237 days: 83 mm, more than a crop.
    expect(said(['natural 6', 'hair length crop'], ...old, ...visitOf(MIX))).toEqual([]);
  });
});

test('strand-test-missing warns of lightener only where there is some', () => {
  const warned = (bowl: string): unknown[] =>
    foundBy(strandMissing, notesOf(['history box-colour'], visitOf(bowl))).map(({ caution }) => caution);
  expect(warned(MIX)).toEqual(['lightener']);
  expect(warned('bowl A 40 unpick')).toEqual([undefined]);
});

describe('removers', () => {
  const unwashed = (...lines: readonly string[]): string[] => saidBy(removerUnwashed, notesOf([], visitOf(...lines)));
  const onDirect = (client: readonly string[], ...lines: readonly string[]): string[] =>
    saidBy(removerOnDirect, notesOf(client, visitOf(...lines)));

  test('remover-unwashed is silent after a wash or a rinse, while it is on, and at other products', () => {
    const run = ['bowl A 40 unpick', 'on 14:00 A', 'off 14:20 A'];
    expect(unwashed(...run, 'wash 14:20')).toEqual([]);
    expect(unwashed(...run, 'rinse 14:20')).toEqual([]);
    expect(unwashed('bowl A 40 unpick', 'on 14:00 A')).toEqual([]);
    expect(unwashed('bowl A 40 neon teal', 'on 14:00 A', 'off 14:20 A')).toEqual([]);
    expect(unwashed('on 14:00 A', 'off 14:20 A')).toEqual([]);
    expect(unwashed(...run)).toEqual(['mind: Bowl A, unpick, a remover, came off at 14:20, and no wash is noted.']);
  });

  test('remover-on-direct-dye fires for what it does not take out', () => {
    expect(onDirect(['history direct-dye ends'], 'bowl A 40 unpick', 'place A lengths')).toEqual([
      'mind: Bowl A holds unpick, a remover, and direct-dye is on file there.',
    ]);
    expect(onDirect(['history 2026-10 henna'], 'bowl A 40 unpick')).toEqual([]);
    expect(onDirect(['history 2026-01 box-colour'], 'bowl A 40 unpick')).toEqual([]);
    expect(onDirect(['history 2026-01 henna'], MIX)).toEqual([]);
    expect(onDirect(['history 2026-01 henna ends'], 'bowl A 40 unpick', 'place A roots')).toEqual([]);
  });
});
