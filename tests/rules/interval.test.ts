import { describe, expect, test } from 'vitest';
import lightenerAgain from '../../src/rules/interval/lightener-again.ts';
import reshapedLately from '../../src/rules/interval/reshaped-lately.ts';
import { notesOf, saidBy, visitOf } from './one-rule.ts';

const MIX = 'bowl A 40 clay + 80 dev-6';

describe('lightener-again', () => {
  const said = (date: string, first: readonly string[], ...then: readonly string[]): string[] =>
    saidBy(lightenerAgain, notesOf([], [`visit ${date} wren-abbott`, ...first, ...visitOf(...then)]));

  test.each([
    ['after two weeks', '2026-08-21', [MIX], [MIX]],
    ['on the same day', '2026-09-04', [MIX], [MIX]],
    ['elsewhere', '2026-08-28', [MIX, 'place A nape'], [MIX, 'place A top']],
    ['after colour', '2026-08-28', ['bowl A 40 cream 6/0 + 60 dev-6'], [MIX]],
    ['with a stretch test of the day', '2026-08-28', [MIX], ['test stretch springs-back', MIX]],
    ['at colour', '2026-08-28', [MIX], ['bowl A 40 cream 6/0 + 60 dev-6']],
    ['after a bowl that was left', '2026-08-28', [MIX, 'left A 120'], [MIX]],
  ])('is silent %s', (_, date, first, then) => {
    expect(said(date, first, ...then)).toEqual([]);
  });

  test('is not quieted by a strand test, which says how far hair lifts and not whether it is rested', () => {
    expect(said('2026-08-28', [MIX], 'test strand clay 20min yellow', MIX)).toEqual([
      'mind: Bowl A lightens where bowl A of 2026-08-28 did, 7 d before.',
    ]);
  });

  test('fires within two weeks, high-lift colour included', () => {
    expect(said('2026-08-22', [MIX], MIX)).toEqual([
      'mind: Bowl A lightens where bowl A of 2026-08-22 did, 13 d before.',
    ]);
    expect(said('2026-08-22', ['bowl H 40 high 10/1 + 80 dev-9'], 'bowl B 40 high 10/1 + 80 dev-9')).toEqual([
      'mind: Bowl B lightens where bowl H of 2026-08-22 did, 13 d before.',
    ]);
  });
});

describe('reshaped-lately', () => {
  const said = (history: string, ...lines: readonly string[]): string[] =>
    saidBy(reshapedLately, notesOf([history], visitOf(...lines)));

  test.each([
    ['after two weeks', 'history 2026-08-21 perm', [MIX]],
    ['before it', 'history 2026-09-05 perm', [MIX]],
    ['without a day', 'history perm', [MIX]],
    ['in another month', 'history 2026-08 perm', [MIX]],
    ['after colour', 'history 2026-08-28 box-colour', [MIX]],
    ['after what is no word of the trade', 'history 2026-08-28 something', [MIX]],
    ['on the new growth', 'history 2026-08-28 perm ends', [MIX, 'place A roots']],
    ['with a stretch test of the day', 'history 2026-08-28 perm', ['test stretch springs-back', MIX]],
    ['at lightener on a relaxer, which has a rule of its own', 'history 2026-08-28 relaxer', [MIX]],
    ['at a gloss', 'history 2026-08-28 perm', ['bowl A 40 gloss 6/0 + 80 dev-6']],
  ])('is silent %s', (_, history, lines) => {
    expect(said(history, ...lines)).toEqual([]);
  });

  test('is not quieted by a strand test', () => {
    expect(said('history 2026-08-28 perm', 'test strand clay 20min yellow', MIX)).toEqual([
      'mind: Bowl A goes on hair that had a perm 7 d before.',
    ]);
  });

  test('fires within two weeks, and within the same month where no day can be earlier', () => {
    expect(said('history 2026-08-22 smoothing', MIX)).toEqual([
      'mind: Bowl A goes on hair that had a smoothing 13 d before.',
    ]);
    expect(said('history 2026-08-28 relaxer', 'test stretch breaks', 'bowl A 40 cream 6/0 + 60 dev-6')).toHaveLength(1);
    expect(said('history 2026-09 perm lengths', 'bowl A 40 cream 6/0 + 60 dev-6', 'place A ends')).toEqual([
      'mind: Bowl A goes on hair that had a perm 3 d before.',
    ]);
  });
});
