import { describe, expect, test } from 'vitest';
import leftOn from '../../src/rules/time/reaction-left-on.ts';
import tonerOn from '../../src/rules/time/toner-on-lightener.ts';
import { foundBy, notesOf, saidBy, visitOf } from './one-rule.ts';

const CLAY = 'bowl A 40 clay + 80 dev-6';

describe('reaction-left-on', () => {
  const said = (...lines: readonly string[]): string[] => saidBy(leftOn, notesOf([], visitOf(CLAY, ...lines)));
  const HEAD = 'on 14:00 A roots, lengths';
  const late = 'stop: Reaction at 14:22; bowl A roots came off at 14:43, 21 min later.';

  test.each([
    'reaction +22 A crown burning',
    'reaction 14:22 A roots burning',
    'reaction 14:22 burning',
    'reaction 14:22 crown "burning, she is crying"',
    'reaction 14:22 A "burning"',
    'reaction 14:22 A roots "tingling, then burning"',
  ])('reads `%s`', (line) => {
    expect(said(HEAD, line, 'off 14:43 A')).toEqual([late]);
  });

  test('says what is still on', () => {
    expect(said(HEAD, 'reaction 14:22 A crown burning')).toEqual([
      'stop: Reaction at 14:22 while bowl A roots was on, and nothing says that it came off.',
    ]);
  });

  test('names what came off first, and what is still on before it', () => {
    const two = ['on 14:00 A top', 'on 14:00 A nape', 'reaction 14:22 A burning', 'off 14:40 A nape'];
    expect(said(...two, 'off 14:43 A top')).toEqual([
      'stop: Reaction at 14:22; bowl A nape came off at 14:40, 18 min later.',
    ]);
    expect(said(...two)).toEqual([
      'stop: Reaction at 14:22 while bowl A top was on, and nothing says that it came off.',
    ]);
  });

  test('asks for the rinse of what names no bowl', () => {
    const [found] = foundBy(leftOn, notesOf([], visitOf('on 14:00 roots', 'reaction 14:22 burning', 'off 14:43')));
    expect(found?.todo).toContain('as in `rinse 14:22`;');
  });

  test('minds what only tingles', () => {
    expect(said(HEAD, 'reaction 14:22 A tingling', 'off 14:43 A')).toEqual([late.replace('stop', 'mind')]);
  });

  test('counts past midnight, and a hand that named the bowl though not its place', () => {
    expect(said('on 23:50 A top', 'reaction 0:10 A nape burning', 'off 0:25 A')).toEqual([
      'stop: Reaction at 00:10; bowl A top came off at 00:25, 15 min later.',
    ]);
  });

  test.each([
    ['off at once', [HEAD, 'reaction 14:22 A burning', 'off 14:24 A']],
    ['five minutes on', [HEAD, 'reaction 14:22 A burning', 'off 14:27 A']],
    ['a hedged time', [HEAD, 'reaction ~14:22 A burning', 'off 14:31 A']],
    ['after it came off', [HEAD, 'off 14:20 A', 'reaction 14:22 A redness']],
    ['at the minute that it came off', [HEAD, 'off 14:22 A', 'reaction 14:22 A redness']],
    ['before it went on', [HEAD, 'reaction 13:50 "red from the hat"', 'off 14:43 A']],
    ['stopped', [HEAD, 'reaction 14:22 A burning', 'stopped 14:23 A "rinsed at once"']],
    ['stopped, and off later by its own line', [HEAD, 'reaction 14:22 A burning', 'stopped 14:23 A', 'off 14:43 A']],
    ['the place rinsed', [HEAD, 'reaction 14:22 A crown burning', 'rinse 14:24 crown', 'off 14:43 A']],
    ['part of it rinsed off', [HEAD, 'reaction 14:22 A burning', 'off 14:24 A roots', 'off 14:43 A lengths']],
    ['another place of the head', ['on 14:00 A nape', 'reaction 14:22 fringe burning', 'off 14:43 A']],
    ['no time', [HEAD, 'reaction A burning', 'off 14:43 A']],
    ['nothing that hurt', [HEAD, 'reaction 14:22 A "no redness"', 'off 14:43 A']],
    ['nothing on', ['reaction 14:22 A burning']],
    ['a time that counts from nothing', ['reaction +5 A burning', 'reaction +5 burning']],
  ])('is silent at %s', (_, lines) => {
    expect(said(...lines)).toEqual([]);
  });

  test('is silent where the other bowl hurt', () => {
    const lines = ['bowl B 40 neon teal', 'on 14:00 A top', 'on 14:02 B ends', 'off 14:50 A', 'off 14:24 B'];
    expect(said(...lines, 'reaction 14:22 B burning')).toEqual([]);
    expect(said(...lines, 'reaction +22 burning')).toEqual([]);
    expect(said(...lines, 'reaction 14:22 A burning')).toHaveLength(1);
  });

  test('is mended by the line that it asks for', () => {
    const lines = [HEAD, 'reaction 14:22 A burning', 'off 14:43 A'];
    const [found] = foundBy(leftOn, notesOf([], visitOf(CLAY, ...lines)));
    const line = /`(rinse [^`]+)`/.exec(found?.todo ?? '')?.[1] ?? '';
    expect(line).toBe('rinse 14:22 A');
    expect(said(...lines, line)).toEqual([]);
  });
});

describe('toner-on-lightener', () => {
  const PEARL = 'bowl T 20 gloss 9/1 + 40 dev-6';
  const said = (...lines: readonly string[]): string[] => saidBy(tonerOn, notesOf([], visitOf(CLAY, PEARL, ...lines)));
  const times = (lightener: string, toner: string): string[] => [
    `on 14:00 A ${lightener}`,
    'off 14:40 A',
    `on 14:35 T ${toner}`,
    'off 14:50 T',
  ];

  test.each([
    ['the same place', times('top', 'top'), 'bowl A top', 'Bowl T top'],
    ['one within the other', times('top', 'top left'), 'bowl A top', 'Bowl T top left'],
    ['no place at all', times('', ''), 'bowl A', 'Bowl T'],
    [
      'a comb through foils',
      ['place A top weave x12 foil', 'place T top comb-through', ...times('top', 'top')],
      'bowl A top',
      'Bowl T top',
    ],
    [
      'places and no more said',
      ['place A top foil', 'place T top', ...times('top', 'top')],
      'bowl A top',
      'Bowl T top',
    ],
    ['foils and no more said', ['place A top weave x12 foil', ...times('top', 'top')], 'bowl A top', 'Bowl T top'],
    ['toner off before the lightener', ['on 14:00 A top', 'off 14:40 A', 'on 14:30 T top', 'off 14:35 T'], '', ''],
  ])('fires at %s', (_, lines, lightener, toner) => {
    const all = said(...lines);
    expect(all).toHaveLength(1);
    if (lightener !== '') expect(all).toEqual([`fix: ${toner} went on at 14:35, 5 min before ${lightener} came off.`]);
  });

  test.each([
    ['rinsed first', ['on 14:00 A top', 'off 14:40 A', 'on 14:40 T top', 'off 14:50 T']],
    ['another place', times('top', 'nape')],
    ['what is left over', times('top', 'rest')],
    ['only one place named', times('top', '')],
    ['lowlights between foils', ['place A+T top weave x12 turn A T A', ...times('top', 'top')]],
    [
      'lowlights in foils of their own',
      ['place A top weave x6 foil', 'place T top weave x6 foil', ...times('top', 'top')],
    ],
    [
      'roots tapped between foils',
      ['place A top weave x6 foil', 'place T roots top apply', ...times('top', 'roots top')],
    ],
    ['a block between foils', ['place A top weave x6 foil', 'place T top block', ...times('top', 'top')]],
    [
      'a remark on where it went',
      ['place A top slice foil', 'place T top comb-through "round the foils"', ...times('top', 'top')],
    ],
    ['a hedged time', ['on 14:00 A top', 'off ~14:40 A', 'on 14:36 T top', 'off 14:50 T']],
    ['lightener that is still on', ['on 14:00 A top', 'on 14:35 T top', 'off 14:50 T']],
    ['a bowl that is not mixed', ['on 14:00 A top', 'off 14:40 A', 'on 14:35 X top', 'off 14:50 X']],
    ['toner before lightener', ['on 14:00 T top', 'on 14:10 A top', 'off 14:20 T', 'off 14:40 A']],
  ])('is silent at %s', (_, lines) => {
    expect(said(...lines)).toEqual([]);
  });

  test('says a toner once, however much lightener it went on over', () => {
    const two = ['bowl B 40 clay + 80 dev-6', 'on 14:00 A top', 'on 14:00 B top', 'on 14:35 T top', 'off 14:40 A, B'];
    expect(said(...two, 'off 14:50 T')).toHaveLength(1);
  });

  test('is silent at other colour on a place of its own kind', () => {
    const lines = times('top', 'top');
    expect(saidBy(tonerOn, notesOf([], visitOf(CLAY, 'bowl T 20 cream 5/0 + 30 dev-6', ...lines)))).toEqual([]);
    expect(saidBy(tonerOn, notesOf([], visitOf('bowl A 40 high 10/1 + 80 dev-9', PEARL, ...lines)))).toEqual([]);
    expect(saidBy(tonerOn, notesOf([], visitOf(PEARL, 'on 14:35 T top', 'off 14:50 T')))).toEqual([]);
  });
});
