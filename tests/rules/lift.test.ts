import { expect, test } from 'vitest';
import { rulesIn, saidIn, textOf } from './compile.ts';

const SHELF = `
  product dev-6 "Cream developer" developer 6%
  product clay "Peregrine clay" lightener
  range neon "Kelp direct" semi
    mix none
    shades teal`;

const visit = (...lines: string[]): string =>
  `${textOf(SHELF)}\nclient wren-abbott "Wren Abbott"\nvisit 2026-09-04 wren-abbott\n${lines.join('\n')}\n`;
const CLAY = ['bowl A 40 clay + 80 dev-6', 'on 14:00 A top', 'off 14:30 A'];

test.each([
  ['pale yellow', [...CLAY, 'check 14:29 A pale-yellow']],
  ['white hair that nothing lightened', ['bowl A 30 neon teal', 'on 14:00 A', 'check 14:10 A white', 'off 14:20 A']],
  ['what is found at the start', [...CLAY, 'check 14:20 A gold', 'start temples white']],
  ['a stretch test', [...CLAY, 'check 14:20 A gold', 'test stretch ends springs-back']],
  ['a strand test short of it', [...CLAY, 'check 14:20 A gold', 'test strand clay 20min yellow']],
])('past-pale-yellow is silent at %s', (_, lines) => {
  expect(rulesIn(visit(...lines))).not.toContain('past-pale-yellow');
});

test.each([
  [
    'half a stage past it',
    [...CLAY, 'check 14:29 A top pale-yellow-white'],
    'Top is past pale yellow: pale-yellow-white.',
  ],
  ['the far end of a span', [...CLAY, 'check 14:29 A yellow to white'], 'The hair is past pale yellow: white.'],
  ['a strand test', ['test strand clay 40min white'], 'The strand is past pale yellow: white.'],
  ['a strand test of one place', ['test strand clay 40min white ends'], 'Ends is past pale yellow: white.'],
])('past-pale-yellow fires at %s', (_, lines, message) => {
  expect(saidIn(visit(...lines))).toEqual([`stop past-pale-yellow: ${message}`]);
});

test('past-pale-yellow reads strand tests under the client as well', () => {
  expect(rulesIn(`${visit()}client wren-abbott\ntest strand 2026-09-01 clay 40min white\n`)).toEqual([
    'past-pale-yellow',
  ]);
});
