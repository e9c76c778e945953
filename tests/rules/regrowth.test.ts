import { describe, expect, test } from 'vitest';
import rule from '../../src/rules/interval/regrowth-unlikely.ts';
import { notesOf, saidBy } from './one-rule.ts';

const CREAM = 'bowl A 40 cream 6/0 + 60 dev-6';

/** What is found three weeks after a visit with some lines. */
const said = (before: readonly string[], line: string, client: readonly string[] = []): string[] =>
  saidBy(
    rule,
    notesOf(client, [
      'visit 2026-08-14 wren-abbott',
      ...before,
      'visit 2026-09-04 wren-abbott',
      line,
      CREAM,
      'place A roots',
    ]),
  );

const ROOTS = [CREAM, 'place A roots'];
const late = (mm: number): string => `fix: ${mm} mm of new growth, 21 d after the roots were done on 2026-08-14.`;

describe('regrowth-unlikely', () => {
  test.each([
    ['in millimetres', 'regrowth 45mm', 45],
    ['in centimetres', 'regrowth 15cm', 150],
    ['of all the roots', 'regrowth 45mm roots', 45],
    ['from the first millimetre of doubt', 'regrowth 27mm', 27],
  ])('fires %s', (_, line, mm) => {
    expect(said(ROOTS, line)).toEqual([late(mm)]);
  });

  test('fires after lightener on all the roots', () => {
    expect(said(['bowl A 40 clay + 80 dev-6', 'place A roots on-scalp'], 'regrowth 45mm')).toEqual([late(45)]);
  });

  test.each([
    ['what three weeks can grow', ROOTS, 'regrowth 9mm'],
    ['fast hair, and a generous eye', ROOTS, 'regrowth 26mm'],
    ['a hedged length', ROOTS, 'regrowth ~45mm'],
    ['one place of the head', ROOTS, 'regrowth 45mm nape'],
    ['a hairline done in between', [CREAM, 'place A hairline on-scalp'], 'regrowth 45mm'],
    ['foils done in between', ['bowl A 40 clay + 80 dev-6', 'place A top weave x8 foil'], 'regrowth 45mm'],
    ['gloss done in between', ['bowl A 40 gloss 6/0 + 80 dev-6', 'place A roots'], 'regrowth 45mm'],
    ['roots left out in part', [...ROOTS, 'leave crown "stands up"'], 'regrowth 45mm'],
    ['a visit that was stopped', [...ROOTS, 'stopped "fire alarm"'], 'regrowth 45mm'],
    ['nothing measured', ROOTS, 'start roots 6'],
  ])('is silent at %s', (_, before, line) => {
    expect(said(before, line)).toEqual([]);
  });

  test('is silent where foils of another day may be meant', () => {
    expect(said(ROOTS, 'regrowth 45mm', ['history 2026-03 lightener top'])).toEqual([]);
  });

  test('is silent at a first visit', () => {
    expect(
      saidBy(rule, notesOf([], ['visit 2026-09-04 wren-abbott', 'regrowth 45mm', CREAM, 'place A roots'])),
    ).toEqual([]);
  });
});
