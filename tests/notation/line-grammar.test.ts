import { expect, test } from 'vitest';
import { makeGrammar } from '../../src/notation/line-grammar.ts';
import type { Item } from '../../src/notation/line-tree.ts';
import { readLine } from '../../src/notation/read-line.ts';

test('the grammar passes the parser generator’s own checks', () => {
  expect(() => makeGrammar(true)).not.toThrow();
});

const sliced = (line: string, run: { from: number; to: number } | undefined): string =>
  run === undefined ? '' : line.slice(run.from, run.to);

/** An item as its kind, its characters and what the grammar saw in them. */
const itemText = (line: string, item: Item): string => {
  const { kind, first, second, unit, secondUnit, percent, about, relative } = item;
  const parts = [
    second && `${sliced(line, first)} to ${sliced(line, second)}`,
    unit && `unit ${sliced(line, unit)}`,
    secondUnit && `then ${sliced(line, secondUnit)}`,
    percent && 'per cent',
    about && 'about',
    relative && 'after',
  ].filter((part) => typeof part === 'string');
  return `${kind} ${sliced(line, item)}${parts.length > 0 ? ` (${parts.join(', ')})` : ''}`;
};

const groups = (line: string): string[][] =>
  readLine(line).tree.groups.map((group) => group.map((item) => itemText(line, item)));

test.for<[line: string, ...groups: string[][]]>([
  ['bowl A 40 g clay + 20vol', ['word A', 'number 40 g (unit g)', 'word clay'], ['number 20vol (unit vol)']],
  ['bowl A 40clay,80 dev', ['word A', 'number 40', 'word clay'], ['number 80', 'word dev']],
  [
    'bowl A 30-45 g ~22? 20%',
    ['word A', 'number 30-45 g (30 to 45, unit g)', 'number ~22? (about)', 'number 20% (per cent)'],
  ],
  ['time 30 - 45 min', ['number 30 - 45 min (30 to 45, unit min)']],
  [
    'next A -20%, b - 20%',
    ['word A', 'dash -', 'number 20% (per cent)'],
    ['word b', 'dash -', 'number 20% (per cent)'],
  ],
  ['next 8w -20%', ['number 8w (unit w)', 'dash -', 'number 20% (per cent)']],
  ['charge foils 95 - 10%', ['word foils', 'number 95', 'dash -', 'number 10% (per cent)']],
  ['mix 1:1.5-1:2', ['pair 1:1.5-1:2 (1:1.5 to 1:2)']],
  ['mix 1:1.5 - 1:2', ['pair 1:1.5 - 1:2 (1:1.5 to 1:2)']],
  ['mix 1:1.5-2', ['pair 1:1.5-2 (1:1.5 to 2)']],
  ['on 14:35-14:55 A', ['clock 14:35-14:55 (14:35 to 14:55)', 'word A']],
  ['on 2.38pm-3pm A', ['clock 2.38pm-3pm (2.38 to 3, unit pm, then pm)', 'word A']],
  ['on +10 A, +20', ['clock +10 (after)', 'word A'], ['plus +', 'number 20']],
  ['on + 10 min A', ['clock + 10 min (unit min, after)', 'word A']],
  ['on +1h A', ['clock +1h (unit h, after)', 'word A']],
  ['on +1 h A', ['clock +1 (after)', 'word h', 'word A']],
  ['check 7.5', ['number 7.5']],
  ['check 15.05 yellow?', ['clock 15.05', 'word yellow? (about)']],
  ['place A+B x6 x 6', ['word A', 'plus +', 'word B', 'count x6', 'word x', 'number 6']],
  ['want ~ 9, ~', ['number ~ 9 (about)'], ['unknown ~']],
  ['start 7+ roots', ['number 7', 'plus +', 'word roots']],
  ['hold all "why" # x', ['word all', 'text "why"']],
  ['zork', []],
  ['note anything at all'],
])('%s', ([line, ...expected]) => expect(groups(line)).toEqual(expected));
