import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import rule from '../../src/rules/promise/promise-unkept.ts';
import { saidBy } from './one-rule.ts';

const SHELF = `range gloss "Sheen" demi
  mix 1:2
  uses gloss-act
  tones 1 ash, 4 copper
product gloss-act "Sheen activator" developer 1.9%
`;

const NOTES = readFileSync(new URL('../cases/topics/next-words-left-out.bowl', import.meta.url), 'utf8').replace(
  /^#.*\n/gm,
  '',
);

test('a shade that next leaves out in words, and that is in the bowl again', () => {
  expect(saidBy(rule, SHELF + NOTES)).toEqual(['mind: Bowl G holds 7/4 again, which was to be left out.']);
});

test('no word of it where the shade is left out, or another bowl holds it', () => {
  const kept = NOTES.replace('bowl G 22 gloss 7/1 + 11 gloss 7/4', 'bowl G 33 gloss 7/1');
  expect(saidBy(rule, SHELF + kept)).toEqual([]);
  const other = kept.replace('bowl G 33', 'bowl H 10 gloss 7/4 + gloss-act 1:2\n  bowl G 33');
  expect(saidBy(rule, SHELF + other)).toEqual([]);
});

test('a share in an earlier of two next lines is promised too', () => {
  const notes = NOTES.replace(/next 8w gloss "G without.*"/u, 'next G -20%\n  next 8w gloss').replace(
    'bowl G 22 gloss 7/1 + 11 gloss 7/4',
    'bowl G 26 gloss 7/1 + 10 gloss 7/4',
  );
  expect(saidBy(rule, SHELF + notes)).toEqual(['mind: Bowl G is 108 g; it was 90 g, and 20 % less was promised.']);
});
