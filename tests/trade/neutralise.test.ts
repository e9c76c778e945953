import { describe, expect, test } from 'vitest';
import {
  neutralisersAt,
  neutralisersOf,
  neutralisesAt,
  neutralisesStage,
  temperatureOf,
  undercoatAt,
} from '../../src/trade/neutralise.ts';

test.each([
  [0, 'plum-black', ['green']],
  [1, 'plum-black', ['green']],
  [4.4, 'red-orange', ['blue', 'green']],
  [4.5, 'orange', ['blue']],
  [7, 'gold', ['blue', 'violet']],
  [10, 'pale yellow', ['violet']],
  [12, 'pale yellow', ['violet']],
])('depth %d shows %s, answered by %j', (depth, warmth, colours) => {
  expect(undercoatAt(depth).seen).toBe(warmth);
  expect(neutralisersAt(depth)).toEqual(colours);
});

describe('neutralisesAt', () => {
  test.each([
    ['violet', 9, true],
    ['violet', 6, true],
    ['violet', 5, false],
    ['violet', 3, false],
    ['blue', 9, true],
    ['blue', 3, true],
    ['green', 3, true],
    ['green', 4, true],
    ['green', 5, true],
    ['green', 6, false],
    ['green', 9, false],
    ['yellow', 9, false],
    ['neutral', 5, false],
  ] as const)('%s at depth %d: %s', (family, depth, answers) => {
    expect(neutralisesAt(family, depth)).toBe(answers);
  });

  test('a stage is taken at its rough depth, another word at none', () => {
    expect(neutralisesStage('violet', 'yellow')).toBe(true);
    expect(neutralisesStage('violet', 'orange')).toBe(false);
    expect(neutralisesStage('violet', 'teal')).toBeUndefined();
    expect(neutralisersOf('orange')).toEqual(['blue']);
    expect(neutralisersOf('teal')).toEqual([]);
  });
});

test.each([
  ['yellow', 'warm'],
  ['orange', 'warm'],
  ['red', 'warm'],
  ['warm', 'warm'],
  ['violet', 'cool'],
  ['blue', 'cool'],
  ['green', 'cool'],
  ['cool', 'cool'],
  ['neutral', undefined],
] as const)('%s is %s', (family, temperature) => {
  expect(temperatureOf(family)).toBe(temperature);
});
