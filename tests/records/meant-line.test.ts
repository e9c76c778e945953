import { describe, expect, it } from 'vitest';
import { meantLine, nearWords } from '../../src/records/meant-line.ts';

describe('a line without a first word of its entry', () => {
  it.each(['40g cream 5/0 + 60g 6%', 'cream 40 + 60 6%', '40 clay 20vol 1:2', '• 40 clay + 80 dev-6'])(
    'looks like a bowl: %s',
    (line) => expect(meantLine(line, 'visit')?.todo).toBe('Write `bowl A` before it.'),
  );

  it.each(['scalp burning at the nape, rinsed', 'itchy behind the ear', 'blisters at the hairline', 'nape swollen'])(
    'tells of a reaction: %s',
    (line) => expect(meantLine(line, 'visit')?.todo).toContain('`reaction HH:MM`'),
  );

  it.each([
    '40 minutes late',
    'bwol A 40 clay + 80 6%',
    'burnished look',
    'came late',
    'reacton burning',
    'check burning',
  ])('is neither: %s', (line) => expect(meantLine(line, 'visit')).toBeUndefined());

  it('is no bowl under a client, and nothing at all on the shelf', () => {
    expect(meantLine('40 clay + 80 6%', 'client')).toBeUndefined();
    expect(meantLine('scalp burning', 'client')?.todo).toContain('under its visit');
    expect(meantLine('scalp burning', 'product')).toBeUndefined();
  });
});

describe('nearWords', () => {
  it.each([
    ['chek', ['check']],
    ['nte', ['note']],
    ['came', []],
    ['told', []],
    ['pain', []],
  ])('%s', (word, near) => expect(nearWords(word, 'visit')).toEqual(near));
});
