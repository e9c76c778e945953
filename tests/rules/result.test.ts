import { describe, expect, test } from 'vitest';
import rule from '../../src/rules/result/result-beyond-look.ts';
import { findIn, rulesIn, saidIn, textOf } from './compile.ts';
import { notesOf, saidBy, visitOf } from './one-rule.ts';

const SHELF = `
  range neon "Kelp direct" semi
    mix none
    shades teal`;

const visit = (...lines: string[]): string =>
  `${textOf(SHELF)}\nclient wren-abbott "Wren Abbott"\nvisit 2026-09-04 wren-abbott\n${lines.join('\n')}\n`;

describe('result-against-want', () => {
  test.each([
    ['a depth', ['want lengths 9', 'result lengths 8']],
    ['a span that reaches it', ['want lengths 9', 'result lengths 6-8']],
    ['another place', ['want lengths 9', 'result roots 6']],
    ['no result', ['want lengths 9']],
    ['no depth wanted', ['want lengths ash', 'result lengths 6']],
    ['no depth that came of it', ['want lengths 9', 'result lengths even']],
    ['the rest planned, by its depth', ['want roots 8', 'result roots 6', 'next 6w foils to reach 8']],
    ['the rest planned, by its place', ['want roots 8', 'result roots 6', 'next 6w roots lighter']],
    ['the rest planned, in a remark', ['want top left 8', 'result top 6', 'next 6w "top once more"']],
  ])('is silent at %s', (_, lines) => {
    expect(rulesIn(visit(...lines))).toEqual([]);
  });

  test.each([
    [['want lengths 9', 'result roots 4, lengths 7½'], 'Lengths: wanted 9, result 7.5, 1.5 depths apart.'],
    [['want lengths 5 to 6', 'result lengths 8'], 'Lengths: wanted 5, result 8, 3 depths apart.'],
    [['want top 9', 'result top left 8½, top 7'], 'Top: wanted 9, result 7, 2 depths apart.'],
    [['want top 9', 'result top left 6, top right 7½'], 'Top: wanted 9, result 7.5, 1.5 depths apart.'],
    [['want 9', 'result lengths 6-7'], 'The hair: wanted 9, result 6 to 7, 2 depths apart.'],
  ])('fires at %j', (lines, message) => {
    expect(saidIn(visit(...lines))).toContain(`mind result-against-want: ${message}`);
  });

  test.each(['next 6w', 'next 6w roots, A -20%', 'next 6w foils', 'next 6w nape lighter'])(
    'is not settled by `%s`',
    (line) => {
      expect(rulesIn(visit('want roots 8', 'result roots 6', line))).toContain('result-against-want');
    },
  );

  test.each([
    ['want roots 8', 'result roots 6'],
    ['want 8-9', 'result 6'],
    ['want top left 5-6', 'result top left 9'],
  ])('is settled by the lines it names: %s, %s', (want, result) => {
    const [finding] = findIn(visit(want, result)).findings;
    const named = [...(finding?.todo ?? '').matchAll(/`([^`]+)`/gu)].map(([, line = '']) => line);
    expect(named).toHaveLength(2);
    for (const line of named)
      expect(rulesIn(visit(want, result, line.replace('…', 'faded')))).not.toContain('result-against-want');
  });
});

describe('result-missing', () => {
  const done = ['bowl A 30 neon teal', 'on 14:00 A', 'off 14:20 A'];
  test.each([
    ['a result', [...done, 'result teal', 'charge brights 45']],
    ['a photo', [...done, 'photo after.jpg', 'charge brights 45']],
    ['an early end', [...done, 'stopped 14:20 A "itched"', 'charge brights 45']],
    ['a visit that is not closed', done],
    ['a bowl that is still on', ['bowl A 30 neon teal', 'on 14:00 A', 'next 6w']],
    ['no bowl', ['charge cut 45']],
  ])('is silent at %s', (_, lines) => {
    expect(rulesIn(visit(...lines))).not.toContain('result-missing');
  });

  test.each(['charge brights 45', 'paid 45 card', 'next 6w'])('fires where `%s` closes the visit', (line) => {
    expect(saidIn(visit(...done, line))).toEqual([
      'mind result-missing: Bowl A went on and came off, and no `result` line follows.',
    ]);
  });
});

describe('result-beyond-look', () => {
  const A = 'bowl A 40 clay + 80 dev-6';
  const lifted = (seen: string, result: string, ...more: string[]): string[] =>
    saidBy(
      rule,
      notesOf(
        [],
        visitOf(A, 'on 14:00 A top, sides', `check 14:40 A ${seen}`, 'off 14:45 A', ...more, `result ${result}`),
      ),
    );

  test.each([
    ['one depth beyond', lifted('top orange, sides orange', 'top 6')],
    ['darker than the look', lifted('top yellow, sides yellow', 'top 7')],
    ['the stage it names itself', lifted('top orange, sides orange', 'top 7 orange')],
    ['a span of stages that holds the look', lifted('top orange, sides orange', 'top 7 orange to gold')],
    ['a start that is lighter than the stage tells', lifted('top orange, sides orange', 'top 7', 'start top 6')],
    ['a place that nobody looked at', lifted('top orange', 'sides 10')],
    [
      'looks that go back, which are a finding of their own',
      lifted('top orange, sides orange', 'top 10', 'check 14:20 A top yellow'),
    ],
    ['the lighter of two places', lifted('top orange, sides yellow', '9')],
    [
      'a second bowl of lightener',
      lifted('top orange, sides orange', 'top 10', 'bowl B 40 clay + 80 dev-6', 'on 14:50 B top', 'off 15:20 B'),
    ],
    ['a further bowl without a time', lifted('top orange, sides orange', 'top 10', 'bowl B 40 cream 9/0 + 80 dev-6')],
  ])('is silent at %s', (_, said) => {
    expect(said).toEqual([]);
  });

  test('is silent where it stayed on long after the look', () => {
    const lines = [A, 'on 14:00 A top', 'check 14:20 A orange', 'off 14:45 A', 'result top 9'];
    expect(saidBy(rule, notesOf([], visitOf(...lines)))).toEqual([]);
  });

  test.each([
    [
      'fix',
      'top 10',
      lifted('top orange, sides orange', 'top 10', 'bowl T 20 gloss 10/2 + 40 dev-6', 'on 15:00 T', 'off 15:10 T'),
      'Top: result 10, and the last look, at 14:40, is orange, about 5.',
    ],
    ['fix', 'all over', lifted('gold', '9'), 'The hair: result 9, and the last look, at 14:40, is gold, about 7.'],
    [
      'mind',
      'one and a half',
      lifted('top gold', 'top 8½'),
      'Top: result 8.5, and the last look, at 14:40, is gold, about 7.',
    ],
  ])('is a %s at %s', (severity, _, said, message) => {
    expect(said).toEqual([`${severity}: ${message}`]);
  });
});
