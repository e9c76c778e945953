import { describe, expect, test } from 'vitest';
import { rulesIn, saidIn } from './compile.ts';

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
    expect(rulesIn(notes(POUNDS, ...lines))).toEqual([]);
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
