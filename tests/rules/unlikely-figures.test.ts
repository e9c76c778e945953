import { describe, expect, it } from 'vitest';
import amountUnlikely from '../../src/rules/dose/amount-unlikely.ts';
import chargeUnlikely from '../../src/rules/money/charge-unlikely.ts';
import { notesOf, saidBy } from './one-rule.ts';

const on = (date: string, ...lines: readonly string[]): string[] => [
  `visit ${date} wren-abbott`,
  ...lines.map((line) => `  ${line}`),
];

describe('a charge far from the last one', () => {
  const charges = (...lines: readonly string[]): string[] => {
    const visits = lines.flatMap((line, index) => on(`2026-0${index + 1}-05`, line));
    return saidBy(chargeUnlikely, notesOf([], visits, ['salon harbour "H"', '  money GBP']));
  };

  it('is named both ways', () => {
    expect(charges('charge foils 65', 'charge foils 6.50')).toEqual([
      'mind: 6.50 GBP is charged for foils; on 2026-01-05 it was 65.00 GBP.',
    ]);
    expect(charges('charge foils 65', 'charge foils 650')).toHaveLength(1);
    expect(charges('charge foils 65', 'charge foils 65', 'charge foils 200')).toHaveLength(1);
  });

  it('is compared to what was right before the slip', () => {
    expect(charges('charge foils 65', 'charge foils 6.50', 'charge foils 68')).toHaveLength(1);
  });

  it('is none for a rise, a discount, another item, a remark, nothing charged, what varies or a redo', () => {
    const sound = [
      ['charge foils 65', 'charge foils 95'],
      ['charge foils 65', 'charge foils 65, discount 90%'],
      ['charge foils 120', 'charge fringe 12'],
      ['charge foils 120', 'charge foils 12 "model evening"'],
      ['charge foils 120', 'charge foils 0'],
      ['charge tip 5', 'charge tip 50'],
      ['charge colour 30', 'charge colour 60', 'charge colour 190'],
    ];
    for (const lines of sound) expect([lines, charges(...lines)]).toEqual([lines, []]);
  });

  it('is the new price once it stands twice', () => {
    expect(charges('charge foils 20', 'charge foils 90', 'charge foils 95', 'charge foils 98')).toHaveLength(1);
  });
});

describe('grams far from the last time', () => {
  const amounts = (...visits: readonly (readonly string[])[]): string[] =>
    saidBy(
      amountUnlikely,
      notesOf(
        [],
        visits.flatMap((lines, index) => on(`2026-0${index + 1}-05`, ...lines)),
      ),
    );
  const foils = (grams: number, count: number, zone = 'top'): string[] => [
    `bowl A ${grams} clay + ${grams * 2} dev-6`,
    `place A ${zone} weave x${count} foil`,
  ];

  it('are named for thrice as much at the same place and way', () => {
    expect(amounts(foils(20, 12), foils(70, 12))).toEqual([
      'mind: Bowl A is 210 g for top; on 2026-01-05 it was 60 g.',
    ]);
  });

  it('are none for more sections, another place, less than thrice, or a few grams', () => {
    expect(amounts(foils(20, 8), foils(70, 28))).toEqual([]);
    expect(amounts(foils(20, 12), foils(70, 12, 'back'))).toEqual([]);
    expect(amounts(foils(20, 12), foils(50, 12))).toEqual([]);
    expect(amounts(foils(5, 4), foils(16, 4))).toEqual([]);
    expect(amounts(foils(20, 12), foils(65, 12), foils(66, 12))).toHaveLength(2);
  });

  it('are named for more than any foil takes, with nothing to compare', () => {
    expect(amounts(foils(120, 6))).toEqual(['mind: Bowl A is 360 g for 6 sections, 60 g each.']);
    expect(amounts([...foils(60, 5).slice(0, 1), 'place A top weave x5 mirror foil'])).toEqual([]);
  });

  it('are none at roots that have grown so much longer', () => {
    const roots = (grams: number, regrowth: string): string[] => [
      `regrowth ${regrowth}`,
      `bowl A ${grams} cream 6/0 + ${grams} dev-6`,
      'place A roots on-scalp',
    ];
    expect(amounts(roots(25, '10mm'), roots(100, '30mm'))).toEqual([]);
    expect(amounts(roots(25, '10mm'), roots(100, '12mm'))).toHaveLength(1);
  });
});
