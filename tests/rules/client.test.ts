import { describe, expect, test } from 'vitest';
import { findIn, rulesIn, saidIn, textOf } from './compile.ts';

const SHELF = `
  product dev-6 "Cream developer" developer 6%
  product clay "Peregrine clay" lightener
  product rinse "Silver rinse" temporary
    mix none
  product milk "Conditioning milk" conditioner
    mix none
  range neon "Kelp direct" semi
    mix none
    shades teal`;

const notes = (salon: readonly string[], client: readonly string[], ...visit: string[]): string =>
  [
    ...salon,
    textOf(SHELF),
    'client wren-abbott "Wren Abbott"',
    ...client,
    'visit 2026-09-04 wren-abbott',
    ...visit,
    '',
  ].join('\n');

describe('under-age', () => {
  const under16 = ['salon harbour "Harbour Row"', 'policy under 16 temporary only'];
  const only = (text: string): string[] => saidIn(text).filter((line) => line.includes('under-age'));

  test.each([
    ['on the sixteenth birthday', under16, ['born 2010-09-04'], 'bowl A 30 neon teal'],
    ['where no birth is noted', under16, [], 'bowl A 30 neon teal'],
    ['where the salon has no such policy', ['salon harbour "Harbour Row"'], ['born 2012-09-04'], 'bowl A 30 neon teal'],
    ['for a kind that is allowed', under16, ['born 2012-09-04'], 'bowl A 30 rinse'],
    ['for what neither colours nor lightens', under16, ['born 2012-09-04'], 'bowl A 30 milk'],
    [
      'for what has no kind',
      [...under16, 'product something "No kind at all"'],
      ['born 2012-09-04'],
      'bowl A 30 something',
    ],
  ])('is silent %s', (_, salon, client, bowl) => {
    expect(only(notes(salon, client, bowl))).toEqual([]);
  });

  test('is silent when all of it stayed in the bowl', () => {
    expect(only(notes(under16, ['born 2012-09-04'], 'bowl A 30 neon teal', 'left A 30'))).toEqual([]);
  });

  test('fires the day before the birthday, once a visit', () => {
    expect(only(notes(under16, ['born 2010-09-05'], 'bowl A 30 neon teal', 'bowl B 40 clay + 80 dev-6'))).toEqual([
      'stop under-age: Aged 15, and bowl A holds neon, which is semi.',
    ]);
  });

  test('takes the youngest that a year alone allows', () => {
    expect(only(notes(under16, ['born 2010'], 'bowl A 30 neon teal'))).toHaveLength(1);
  });

  test.each([
    [
      ['policy under 16 temporary, semi only'],
      'The salon’s policy is temporary and semi only under 16 (example.bowl:2).',
    ],
    [['policy under 16'], 'The salon’s policy is nothing that colours or lightens under 16 (example.bowl:2).'],
  ])('says the policy: %s', (policy, expected) => {
    const text = notes(['salon harbour "Harbour Row"', ...policy], ['born 2012-09-04'], 'bowl A 40 clay + 80 dev-6');
    expect(findIn(text).findings.find(({ rule }) => rule === 'under-age')?.expected).toBe(expected);
  });
});

describe('broken-hold', () => {
  const CLAY = 'bowl A 40 clay + 80 dev-6';
  test.each([
    ['lifted on the day', ['hold lightener to 2026-09-04']],
    ['of another kind', ['hold semi']],
    ['of another product', ['hold milk']],
  ])('is silent with a hold %s', (_, client) => {
    expect(rulesIn(notes([], client, CLAY))).toEqual([]);
  });

  test.each([
    ['hold lightener to 2026-09-05', 'Bowl A holds clay, and `lightener` is held to 2026-09-05.'],
    ['hold clay', 'Bowl A holds clay, and `clay` is held for good.'],
    ['hold oxidative', 'Bowl A holds clay, and `oxidative` is held for good.'],
    ['hold all', 'Bowl A holds clay, and `all` is held for good.'],
  ])('fires at %s', (hold, message) => {
    expect(saidIn(notes([], [hold], CLAY))).toEqual([`stop broken-hold: ${message}`]);
  });

  test('gives the reason noted, and the caution of what is used', () => {
    const [clay] = findIn(notes([], ['hold all "ends gummy"'], CLAY)).findings;
    expect(clay?.expected).toBe('The hold stands at example.bowl:11, "ends gummy".');
    expect(clay?.caution).toMatch(/^Lightener/);
    const [neon] = findIn(notes([], ['hold all'], 'bowl A 30 neon teal')).findings;
    expect(neon?.expected).toBe('The hold stands at example.bowl:11.');
    expect(neon?.caution).toMatch(/^After any reaction/);
  });

  test('begins after the visit that sets it', () => {
    const text = notes([], [], CLAY, 'hold lightener 4w "let it rest"');
    expect(rulesIn(text)).toEqual([]);
    expect(rulesIn(`${text}visit 2026-09-20 wren-abbott\n${CLAY}\n`)).toEqual(['broken-hold']);
    expect(rulesIn(`${text}visit 2026-10-02 wren-abbott\n${CLAY}\n`)).toEqual([]);
  });

  test('is silent when all of it stayed in the bowl', () => {
    expect(rulesIn(notes([], ['hold lightener'], CLAY, 'left A 120'))).toEqual([]);
  });
});
