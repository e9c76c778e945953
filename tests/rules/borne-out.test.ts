import { expect, test } from 'vitest';
import { borneOut } from '../../src/reckon/hair/borne-out.ts';
import { reckonedOf } from '../reckon/reckoned.ts';

const GREEN = /green|khaki/iu;

/** The word that bears a finding on the visit of 4 September out. */
const wordIn = (lines: string, later = ''): string | undefined => {
  const visits = reckonedOf(`visit 2026-09-04 wren-abbott\n${lines}\n${later}`);
  const [first] = visits;
  return first && borneOut(first, visits, GREEN);
};

test('the result bears it out, by its words or its remark', () => {
  expect(wordIn('result lengths 6 green')).toBe('green');
  expect(wordIn('result lengths 6 "went Khaki at the ends"')).toBe('Khaki');
  expect(wordIn('result lengths 6 even')).toBeUndefined();
  expect(wordIn('note "green"')).toBeUndefined();
});

test('a call of the visit bears it out, one without words does not', () => {
  expect(wordIn('call 2026-09-11 "ends turned green"')).toBe('green');
  expect(wordIn('call 2026-09-11')).toBeUndefined();
});

test('later news of that day bears it out, of another day or without words it does not', () => {
  const later = 'visit 2026-10-04 wren-abbott\n';
  expect(wordIn('', `${later}about 2026-09-04 ends "green after two washes"`)).toBe('green');
  expect(wordIn('', `${later}about 2026-09-05 ends "green after two washes"`)).toBeUndefined();
  expect(wordIn('', `${later}about 2026-09-04 ends`)).toBeUndefined();
});

test('a word that the note takes back bears nothing out', () => {
  expect(wordIn('call 2026-09-11 "no green at all"')).toBeUndefined();
  expect(wordIn('call 2026-09-11 "no green"', 'visit 2026-10-04 wren-abbott\nabout 2026-09-04 "khaki now"')).toBe(
    'khaki',
  );
});
