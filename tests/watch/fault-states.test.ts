import { expect, test } from 'vitest';
import { tryState } from '../../.scripts/faults/place.ts';
import { STATES } from '../../.scripts/faults/states.ts';

test('the fault list of watching names its states, each once', () => {
  expect(new Set(STATES.map(({ name }) => name)).size).toBe(STATES.length);
  expect(STATES.length).toBeGreaterThanOrEqual(36);
});

/** A few of them, that cost little; `npm run faults` tries every one, with the system's events and without. */
const COURSE = [
  'saved with a probe file and a back-up that goes',
  'written over with the same size and time',
  'two files that change places',
  'a shelf that goes',
  'a page with one figure changed',
  'the folder of cards taken away while a file is saved',
];

const stateOf = (name: string) => {
  const state = STATES.find((one) => one.name === name);
  if (state === undefined) throw new Error(`no state is called ${name}`);
  return state;
};

test.concurrent.each(COURSE)('ends as a cold build does: %s', async (name) => {
  expect(await tryState(stateOf(name), true)).toBeUndefined();
});

test.concurrent('a watcher that takes nothing in is found out, and a state that does not come about too', async () => {
  const state = stateOf('written over in place');
  expect(await tryState(state, false, false)).toMatch(/^other than a cold build's: clients\/wren\.html/);
  const other = await tryState({ ...state, act: () => undefined }, false, false);
  expect(other).toBe('the state did not come about: a cold build shows wren 1, otto 1, not wren 2, otto 1');
});
