import { describe, expect, test } from 'vitest';
import { leftByCut } from '../../src/reckon/client/cut-off.ts';
import lightenerOnRelaxed from '../../src/rules/condition/lightener-on-relaxed.ts';
import removerOnDirectDye from '../../src/rules/condition/remover-on-direct-dye.ts';
import strandTestMissing from '../../src/rules/condition/strand-test-missing.ts';
import overlap from '../../src/rules/overlap/overlap-on-lightened.ts';
import metal from '../../src/rules/testing/metal-under-peroxide.ts';
import { toNumber } from '../../src/text/exact.ts';
import { notesOf, saidBy, visitOf } from './one-rule.ts';

const MIX = 'bowl A 40 clay + 80 dev-6';

describe('hair that is cut off ends its history', () => {
  // From 31 March 2025 to 4 September 2026 are 522 days: 182.7 mm at 0.35 mm a day. Short hair is 150 mm at most.
  const rules = [
    [strandTestMissing, 'box-colour', MIX],
    [metal, 'henna', MIX],
    [lightenerOnRelaxed, 'relaxer', MIX],
    [removerOnDirectDye, 'direct-dye', 'bowl U 60 unpick'],
    [overlap, 'lightener', 'bowl A 40 clay + 80 dev-9'],
  ] as const;
  test.each(rules)('$name', (rule, kind, bowl) => {
    const said = (hair: string, when: string): string[] =>
      saidBy(
        rule,
        notesOf([hair, `history ${when} ${kind} lengths`], visitOf('start lengths 9', bowl, 'place A+U lengths')),
      );
    expect(said('hair length short', '2025-03')).toEqual([]);
    // 150 mm are 428.6 days: from 30 June 2025 there are 431, from 31 July 400.
    expect(said('hair length short', '2025-06')).toEqual([]);
    expect(said('hair length short', '2025-07')).toHaveLength(1);
    // A year alone may end on its last day: 247 days, 86 mm.
    expect(said('hair length short', '2025')).toHaveLength(1);
    expect(said('hair length chin', '2025-03')).toHaveLength(1);
    expect(said('hair length long', '1990')).toHaveLength(1);
    expect(said('hair medium', '2016')).toHaveLength(1);
    expect(said('hair length crop', '')).toHaveLength(1);
  });

  test('by a salon that counts slower growth, and by her own where it was measured', () => {
    const notes = (salon: readonly string[], ...before: string[]): string[] =>
      saidBy(
        strandTestMissing,
        notesOf(['hair length crop', 'history 2026-03-01 box-colour'], [...before, ...visitOf(MIX)], salon),
      );
    // 187 days: 65 mm at 0.35, and 47 at 0.25.
    expect(notes([])).toEqual([]);
    expect(notes(['salon harbour "Harbour Row"', 'growth 0.25 mm/d'])).toHaveLength(1);
    // 10 mm in 50 days are 0.2 mm a day: 37 mm.
    expect(
      notes(
        [],
        'visit 2026-05-01 wren-abbott',
        'bowl R 40 cream 6/0 + 60 dev-6',
        'visit 2026-06-20 wren-abbott',
        'regrowth 10mm',
      ),
    ).toHaveLength(1);
  });

  test('a cut counts where it says how much is left', () => {
    const said = (cut: string): string[] =>
      saidBy(
        strandTestMissing,
        notesOf(['history 2025-09 box-colour'], ['visit 2026-03-01 wren-abbott', cut, ...visitOf(MIX)]),
      );
    // From 30 September to 1 March are 152 days: 53 mm.
    expect(said('cut 15:45 "3 cm off"')).toHaveLength(1);
    expect(said('cut 15:45 "down to 5 cm"')).toEqual([]);
    expect(said('cut 15:45 "down to 6 cm"')).toHaveLength(1);
    expect(said('cut 15:45 "back to a crop"')).toEqual([]);
    expect(said('cut 15:45 "to the shoulders"')).toHaveLength(1);
    expect(said('cut nape 15:45 "down to 5 mm"')).toHaveLength(1);
  });

  test('plain words of metal end as the word does, and words without a day do not', () => {
    const said = (history: string): string[] => saidBy(metal, notesOf(['hair length crop', history], visitOf(MIX)));
    expect(said('history 2019 box-colour "metallic dye from the market"')).toEqual([]);
    expect(said('history 2019 box-colour "metallic dye, again in 2026"')).toHaveLength(1);
    expect(said('history box-colour "metallic dye, as a student"')).toHaveLength(1);
  });
});

test.each([
  ['3 cm left', 30],
  ['down to 2.5 cm', 25],
  ['trimmed to about 12 mm', 12],
  ['cut to 1in', 25.4],
  ['into a crop', 50],
  ['short to the chin', 300],
  ['3 cm off', undefined],
  ['3 to 4 cm off', undefined],
  ['2 to 3cm', undefined],
  ['to 2 cm below the chin', undefined],
  ['the fringe', undefined],
  ['layers, long as ever', undefined],
])('a cut that says "%s" leaves %s', (text, mm) => {
  const left = leftByCut(text);
  expect(left && toNumber(left)).toBe(mm);
});
