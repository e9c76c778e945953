import { expect, test } from 'vitest';
import { isBlank, readLine } from '../../src/notation/read-line.ts';

test.for<[line: string, word: string, typed: string, form: string | undefined]>([
  ['bowl A', 'bowl', 'bowl', 'mix'],
  ['  BOWL A', 'bowl', 'BOWL', 'mix'],
  ['\ufeff\u200bNote x', 'note', 'Note', 'free'],
  ['visit: 2026-09-04', 'visit', 'visit', 'header'],
  ['zork', 'zork', 'zork', undefined],
  ['wren-abbott’s', "wren-abbott's", 'wren-abbott’s', undefined],
  ['a7 x', 'a7', 'a7', undefined],
  ['a8 x', 'a8', 'a8', undefined],
  ['• bowl A', 'bowl', 'bowl', 'mix'],
  ['  - Note x', 'note', 'Note', 'free'],
  ['* something', '', '', undefined],
  ['-20%', '', '', undefined],
  ['40 clay', '', '', undefined],
  ['"quoted"', '', '', undefined],
])('the first word of `%s`', ([line, word, typed, form]) => {
  const read = readLine(line);
  expect([read.word, line.slice(read.wordRun.from, read.wordRun.to), read.form]).toEqual([word, typed, form]);
});

test('a line without anything, or with a comment alone, is blank', () => {
  for (const line of ['', '  ', '\t\u00a0', '\ufeff', '\u200b', '# x', '  # x', '#']) expect(isBlank(line)).toBe(true);
  for (const line of ['a', ' - ', '"#"', '.']) expect(isBlank(line)).toBe(false);
});

test('a list mark before a known word is white space', () => {
  expect(
    readLine('- off 15:15 A')
      .tree.groups.flat()
      .map(({ kind }) => kind),
  ).toEqual(['clock', 'word']);
});

test('lines that differ in their digits alone share one tree', () => {
  expect(readLine('off 15:15 A').tree).toBe(readLine('off 16:20 A').tree);
  expect(readLine('off 15:15 A').tree).not.toBe(readLine('off 15:15 B').tree);
});
