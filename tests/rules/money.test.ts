import { describe, expect, test } from 'vitest';
import { findIn, rulesIn, saidIn } from './compile.ts';

const notes = (salon: string, ...lines: string[]): string =>
  [
    salon,
    'stylist io "Io"',
    'stylist nia "Nia"',
    'client wren-abbott "Wren Abbott"',
    'visit 2026-09-04 wren-abbott',
    ...lines,
    '',
  ].join('\n');
const POUNDS = 'salon harbour "Harbour Row"\nmoney GBP';

describe('charge-total', () => {
  test.each([
    ['the sum', ['charge foils 65', 'charge cut 42.50', 'charge total 107.50']],
    ['the sum less a discount', ['charge foils 65', 'charge discount 20%', 'charge total 52']],
    ['what is left after a deposit', ['charge foils 65', 'deposit used 25', 'charge total 40']],
    ['no total', ['charge foils 65']],
    ['tenths that no float holds', ['charge a 0.10', 'charge b 0.20', 'charge total 0.30']],
  ])('is silent at %s', (_, lines) => {
    expect(rulesIn(notes(POUNDS, ...lines))).not.toContain('charge-total');
  });

  test.each([
    [POUNDS, ['charge foils 65', 'charge total 66'], 'The total typed is 66.00 GBP; the charge makes 65.00 GBP.'],
    [
      POUNDS,
      ['charge foils 65', 'charge cut 42', 'charge discount 10%', 'charge total 107'],
      'The total typed is 107.00 GBP; the 2 charges less 10.70 GBP off make 96.30 GBP.',
    ],
    [
      'salon harbour "Harbour Row"\nmoney JPY',
      ['charge foils 6500', 'charge total 6000'],
      'The total typed is 6000 JPY; the charge makes 6500 JPY.',
    ],
    [
      'salon harbour "Harbour Row"',
      ['charge foils 65', 'charge total 66'],
      'The total typed is 66.00; the charge makes 65.00.',
    ],
  ])('fires at any other: %s %s', (salon, lines, message) => {
    expect(saidIn(notes(salon, ...lines))).toEqual([`fix charge-total: ${message}`]);
  });
});

describe('split-total', () => {
  test.each([['split io 60%, nia 40%'], ['split io 33.3%, nia 66.7%']])('is silent at %s', (line) => {
    expect(rulesIn(notes(POUNDS, line))).toEqual([]);
  });

  test.each([
    ['split io 60%, nia 30%', 'The shares make 90 % of the visit.'],
    ['split io 50%', 'The shares make 50 % of the visit.'],
  ])('fires at %s', (line, message) => {
    expect(saidIn(notes(POUNDS, line))).toEqual([`fix split-total: ${message}`]);
  });
});

/** Visits by month, June first, each with its lines. */
const visits = (...each: readonly (readonly string[])[]): string =>
  [
    POUNDS,
    'range neon "Kelp direct" semi',
    'mix none',
    'shades teal',
    'client wren-abbott "Wren Abbott"',
    ...each.flatMap((lines, index) => [`visit 2026-0${index + 6}-16 wren-abbott`, ...lines]),
    '',
  ].join('\n');

describe('deposit-unused', () => {
  test.each([
    ['used', ['charge foils 95', 'deposit used 50']],
    ['returned', ['charge foils 95', 'deposit returned 50']],
    ['not charged against', ['note moved to August']],
  ])('is silent when it is %s', (_, lines) => {
    expect(rulesIn(visits(['deposit 50 for 2026-07-16'], lines))).toEqual([]);
  });

  test('is silent of a deposit for another day, or for none', () => {
    expect(rulesIn(visits(['deposit 50 for 2026-08-16', 'deposit 20'], ['charge foils 95']))).toEqual([]);
  });

  test('fires with the amount and the day it was taken', () => {
    const { findings } = findIn(visits(['deposit 50 for 2026-07-16'], ['charge foils 95']));
    expect(findings.map(({ message }) => message)).toEqual([
      'A deposit of 50.00 was taken on 2026-06-16 for this visit, and no line uses it.',
    ]);
    expect(findings[0]?.todo).toBe('Write `deposit used 50.00`, or `deposit returned 50.00`.');
  });
});

describe('deposit-not-taken', () => {
  test.each([
    ['of the first visit in the notes', [['deposit used 50']]],
    ['of a deposit taken', [['deposit 50'], ['deposit used 50']]],
    ['of one taken in two', [['deposit 20'], ['deposit 30'], ['deposit used 50']]],
    ['of one taken the same day', [['cut'], ['deposit 50', 'deposit used 50']]],
    ['of one taken and not yet used', [['cut'], ['deposit 50']]],
  ])('is silent %s', (_, each) => {
    expect(rulesIn(visits(...each))).toEqual([]);
  });

  test.each([
    [
      [['deposit 50'], ['deposit used 50'], ['deposit used 50']],
      '50.00 GBP of deposit is used up here; 50.00 GBP had been taken, on 2026-06-16, and all of it was used or returned before.',
    ],
    [
      [['deposit 40'], ['deposit returned 50']],
      '50.00 GBP of deposit is used up here; 40.00 GBP had been taken, on 2026-06-16.',
    ],
    [
      [['cut'], ['deposit used 50']],
      '50.00 GBP of deposit is used up here; no line of the client’s visits up to then takes any.',
    ],
  ])('fires at %j', (each, message) => {
    expect(saidIn(visits(...each))).toEqual([
      `${message.includes('no line') ? 'mind' : 'fix'} deposit-not-taken: ${message}`,
    ]);
  });
});

describe('charge-missing', () => {
  const DONE = ['bowl A 40 neon teal', 'result lengths even'];
  test.each([
    ['where the client is never charged', [DONE, ['cut']]],
    ['without a bowl', [['charge cut 42'], ['result lengths even']]],
    ['without a result', [['charge cut 42'], ['bowl A 40 neon teal']]],
    ['when all of it stayed in the bowl', [['charge cut 42'], [...DONE, 'left A 40']]],
    ['when put right free of charge', [['charge cut 42'], [...DONE, 'redo 2026-06-16']]],
    ['when charged nothing', [['charge cut 42'], [...DONE, 'charge teal 0']]],
    ['when stopped', [['charge cut 42'], [...DONE, 'stopped "rinsed at once"']]],
  ])('is silent %s', (_, each) => {
    expect(rulesIn(visits(...each))).toEqual([]);
  });

  test('counts the bowls', () => {
    expect(saidIn(visits(['charge cut 42'], [...DONE, 'bowl B 20 neon teal']))).toEqual([
      'mind charge-missing: The visit of 2026-07-16 has 2 bowls and a result, and no charge.',
    ]);
  });
});

describe('paid-differs', () => {
  test.each([
    ['what is due', ['charge foils 95', 'paid 95 card']],
    ['what is due after a deposit', ['charge foils 95', 'deposit used 50', 'paid 45 card']],
    ['the whole charge, the deposit apart', ['charge foils 95', 'deposit 50 for 2026-12-12', 'paid 95 card']],
    ['two ways', ['charge foils 95', 'paid 45 card', 'paid 50 cash']],
    ['nothing, as far as is said', ['charge foils 95']],
    ['without an amount', ['charge foils 95', 'paid card']],
    ['for nothing charged here', ['paid 95 card']],
  ])('is silent at %s', (_, lines) => {
    expect(rulesIn(notes(POUNDS, ...lines))).toEqual([]);
  });

  test.each([
    [['charge foils 95', 'paid 59 card'], '59.00 GBP is paid, and 95.00 GBP is due.', '36.00 GBP short', undefined],
    [
      ['charge foils 95', 'deposit used 50', 'paid 50 card'],
      '50.00 GBP is paid, and 45.00 GBP is due.',
      '5.00 GBP over',
      'Charged 95.00 GBP; deposits make the rest.',
    ],
  ])('fires at %j', (lines, message, label, expected) => {
    const { findings } = findIn(notes(POUNDS, ...lines));
    expect(findings.map((finding) => [finding.message, finding.label, finding.expected])).toEqual([
      [message, label, expected],
    ]);
  });

  test('leaves a total that differs to the rule about totals', () => {
    expect(rulesIn(notes(POUNDS, 'charge foils 95', 'charge total 90', 'paid 90 card'))).toEqual(['charge-total']);
    expect(rulesIn(notes(POUNDS, 'charge foils 95', 'charge total 95', 'paid 90 card'))).toEqual(['paid-differs']);
  });
});

describe('discount-of-nothing', () => {
  test.each([
    [['charge foils 95', 'charge discount 20%']],
    [['charge total 95', 'charge foils 95', 'charge discount 20%', 'charge total 76']],
    [['charge discount 10', 'charge foils 95']],
  ])('is silent at %j', (lines) => {
    expect(rulesIn(notes(POUNDS, ...lines))).not.toContain('discount-of-nothing');
  });

  test('fires at each that stands before', () => {
    const lines = ['charge discount 10%', 'charge discount 20 %', 'charge foils 95', 'charge discount 5%'];
    expect(saidIn(notes(POUNDS, ...lines))).toEqual([
      'fix discount-of-nothing: The discount of 10 % stands before every charge, so it takes nothing off.',
      'fix discount-of-nothing: The discount of 20 % stands before every charge, so it takes nothing off.',
    ]);
  });
});

describe('redo-charged', () => {
  const redone = (...lines: string[]): string[] =>
    saidIn(
      [
        'client wren-abbott "Wren Abbott"',
        'visit 2026-08-30 wren-abbott',
        'visit 2026-09-04 wren-abbott',
        ...lines,
        '',
      ].join('\n'),
    );

  test.each([
    ['nothing', ['charge toner 0']],
    ['a cut besides', ['charge cut 42']],
    ['what a discount takes off whole', ['charge toner 38', 'charge discount 100%']],
  ])('is silent where it charges %s', (_, lines) => {
    expect(redone('redo 2026-08-30', ...lines)).toEqual([]);
  });

  test('fires at colour work, in part as well, and only at a redo', () => {
    const message = 'mind redo-charged: 38.00 is charged for toner, and the visit puts that of 2026-08-30 right.';
    expect(redone('redo 2026-08-30', 'charge cut 42', 'charge toner 38')).toEqual([message]);
    expect(redone('redo 2026-08-30', 'charge toner 38', 'charge discount 50%')).toEqual([message]);
    expect(redone('charge toner 38')).toEqual([]);
  });
});

describe('charged-not-mixed', () => {
  const SHELF = [
    'product dev-6 "Cream developer" developer 6%',
    'product clay "Peregrine clay" lightener',
    'product pearl "Pearl" toner',
    'range gloss "Tidewater gloss" demi',
    'range neon "Kelp direct" semi',
    'range cream "Larkfield cream" permanent',
    'product toner "Toner water" goods',
  ];
  const said = (shelf: readonly string[], ...lines: readonly string[]): string[] =>
    saidIn(notes(shelf.join('\n'), ...lines)).filter((line) => line.includes('charged-not-mixed'));
  const CLAY = 'bowl A 30 clay + 60 dev-6';
  const bare = SHELF.slice(0, -1);

  test.each([
    [[CLAY, 'charge foils 60, toner 26'], 'toner', 'toner, demi, semi or gloss'],
    [[CLAY, 'charge root toner 26'], 'root toner', 'toner, demi, semi or gloss'],
    [['bowl A 30 cream 6/0 + 60 dev-6', 'place A roots', 'charge gloss 26'], 'gloss', 'toner, demi, semi or gloss'],
    [['bowl A 30 neon teal', 'charge lightening 26'], 'lightening', 'lightener'],
  ])('fires at %j', (lines, item, kinds) => {
    expect(said(bare, ...lines)).toEqual([
      `mind charged-not-mixed: 26.00 is charged for ${item}, and no bowl of the visit holds ${kinds}.`,
    ]);
  });

  test.each([
    ['toner', [CLAY, 'bowl T 20 pearl', 'charge toner 26']],
    ['a demi', [CLAY, 'bowl T 20 gloss 9/1 + 40 dev-6', 'charge toner 26']],
    ['a semi', [CLAY, 'bowl T 20 neon teal', 'charge gloss 26']],
    ['permanent colour on lengths', [CLAY, 'bowl T 20 cream 9/1 + 40 dev-6', 'place T lengths', 'charge toner 26']],
    ['a product that the shelf does not know', [CLAY, 'bowl T 20 pearll', 'charge toner 26']],
    ['no bowls in the notes', ['charge toner 26']],
    ['a toner that is free', [CLAY, 'charge foils 60', 'charge toner 0']],
    ['foils, which hold any colour', ['bowl A 30 cream 6/0 + 60 dev-6', 'charge foils 60']],
    ['a name that is no kind', [CLAY, 'charge toner voucher 26', 'charge gold card 20']],
  ])('is silent at %s', (_, lines) => {
    expect(said(bare, ...lines)).toEqual([]);
  });

  test('is silent at goods of that name', () => {
    expect(said(SHELF, CLAY, 'charge toner 9')).toEqual([]);
  });
});
