import { expect, test } from 'vitest';
import { RULES } from '../../src/rules/all.ts';
import { ASKS, asksPlan } from '../../src/rules/asks.ts';

test('every rule says whether a planned visit can be asked, and no other name does', () => {
  expect(Object.keys(ASKS).sort()).toEqual(RULES.map(({ name }) => name).sort());
});

test('what only a finished visit can say is not asked of a planned one', () => {
  for (const rule of ['no-off', 'result-missing', 'no-check', 'charge-missing', 'bowl-unplaced', 'reason-unused'])
    expect(asksPlan(rule)).toBe(false);
  for (const rule of ['skin-test-expired', 'broken-hold', 'on-scalp-strength', 'lightener-again', 'filler-missing'])
    expect(asksPlan(rule)).toBe(true);
});
