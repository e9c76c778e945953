import { describe, expect, test } from 'vitest';
import { rulesIn, saidIn, textOf } from './compile.ts';

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
