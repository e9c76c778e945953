import { test } from 'vitest';
import { expectSaid } from './one-line.ts';

const lines: readonly (readonly [line: string, ...said: object[]])[] = [
  ['photo after.jpg', { file: 'after.jpg' }],
  ['photo "IMG 2 (1).jpg"', { file: 'IMG 2 (1).jpg' }],
  ['photo #3 and #4', { file: '#3 and #4' }],
  ['care no wash for two days', { text: 'no wash for two days' }],
  ['care "mask weekly" by nia', { text: 'mask weekly', by: 'nia' }],
  ['care: mask', { text: 'mask' }],
  ['aim brighter at the front, soft through the nape', { text: 'brighter at the front, soft through the nape' }],
  ['aim "softer" by io', { text: 'softer', by: 'io' }],
  ['aim  two  spaces', { text: 'two  spaces' }],
  ['note foils #3 to #7', { text: 'foils #3 to #7' }],
  ['note "foils" # not said', { text: 'foils' }],
  ['note: "gave her" the card', { text: '"gave her" the card' }],
];

test.for(lines)('%s', ([line, ...said]) => expectSaid(line, said));
