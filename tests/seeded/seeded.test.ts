import { describe, expect, test } from 'vitest';
import { HARMLESS } from '../../.scripts/seeded/harmless.ts';
import { MISTAKES } from '../../.scripts/seeded/mistakes.ts';
import { scoreOf } from '../../.scripts/seeded/score.ts';
import { demoNotes, exampleNotes } from '../../.scripts/seeded/seeded-notes.ts';

/** Every other sound visit; `npm run seeded` plants in all of them. */
const NOTES = [...demoNotes(), ...exampleNotes()].filter((_, index) => index % 2 === 0);

/** Least share that is seen of each kind, and above a `mind`, in hundredths: what was measured over all visits, less three. */
const LEAST: Readonly<Record<string, readonly [seen: number, loud: number]>> = {
  'weights swapped': [97, 97],
  'ratio slipped': [94, 94],
  'other developer': [93, 93],
  'dropped test': [96, 96],
  'test not read': [96, 96],
  'harm told by telephone': [96, 96],
  'hold overlooked': [97, 97],
  'shifted hour': [96, 96],
  'taken off before it was on': [96, 96],
  'end before beginning': [97, 97],
  'lost off': [96, 96],
  'lost on': [97, 97],
  'lost looks': [97, 97],
  'wrong zone': [97, 0],
  'other bowl': [97, 97],
  'toner too early': [97, 97],
  'look that goes back': [90, 90],
  'left too much': [96, 96],
  'wrong sum': [97, 97],
  'figure slipped': [97, 40],
  'paid another sum': [95, 0],
  'pasted twice': [97, 97],
  'name misspelt': [97, 97],
  'tone that is not made': [97, 97],
  'other client': [97, 97],
  'line not finished': [97, 97],
  'lost result': [80, 0],
};

test('there are sound visits enough to plant in', () => {
  expect(NOTES.length).toBeGreaterThan(100);
  expect(Object.keys(LEAST)).toEqual(MISTAKES.map(({ name }) => name));
});

describe.each(scoreOf(NOTES, MISTAKES))('$name', ({ name, planted, seen, loud, odd }) => {
  const [leastSeen = 100, leastLoud = 100] = LEAST[name] ?? [];

  test('is planted, and seen as often as it was when it was measured', () => {
    expect(planted).toBeGreaterThan(10);
    expect((100 * seen) / planted, odd.filter((one) => one.endsWith('nothing')).join('\n')).toBeGreaterThanOrEqual(
      leastSeen,
    );
    expect((100 * loud) / planted).toBeGreaterThanOrEqual(leastLoud);
  });
});

test.each(scoreOf(NOTES, HARMLESS))('nothing is found after $name', ({ planted, seen, odd }) => {
  expect(planted).toBeGreaterThan(5);
  expect(seen, odd.filter((one) => !one.endsWith('nothing')).join('\n')).toBe(0);
});
