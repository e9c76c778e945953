import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { joinSources } from '../../src/journal/journal.ts';
import { readSource } from '../../src/journal/source.ts';
import { findAll } from '../../src/rules/run.ts';

const SHELF = join('tests', 'cases', 'shelf');
const TOPICS = join('tests', 'cases', 'topics');

const read = (path: string) => readSource(path, readFileSync(path));

/** What is found in one note on the shelf of the cases, as `fix other-developer`, in order of the notes. */
const foundIn = (name: string): string[] => {
  const shelf = readdirSync(SHELF).map((file) => read(join(SHELF, file)));
  const { findings } = findAll(joinSources([...shelf, read(join(TOPICS, `${name}.bowl`))]), undefined, '2026-11-30');
  return findings.map(({ severity, rule }) => `${severity} ${rule}`);
};

describe('notes of other hands on bowls, heat, grams, prices and hands', () => {
  const EXPECTED: Readonly<Record<string, readonly string[]>> = {
    'w05-two-bowls-one-place-over-time': ['stop lightener-minutes'],
    'w06-wrong-maker-developer': ['fix other-developer'],
    // That the bowl went on the scalp at 9 % is a slip of its own.
    'w07-lightener-and-tint-one-bowl': ['fix kinds-in-bowl', 'stop on-scalp-strength'],
    'w08-weights-swapped': ['fix ratio-off-mix'],
    'w12-charge-slip-and-huge-mix': ['mind amount-unlikely', 'mind charge-unlikely'],
    'w14-colour-over-dry-tape-extension-heat': ['fix heat-on-lightener'],
    'lightener-minutes-wrong-2': ['stop lightener-minutes'],
    // The note asks for a stop; some leaflets allow a dryer over foil, so a reason can lift it.
    'dryer-heat-wrong-1': ['fix heat-on-lightener'],
    'dryer-heat-wrong-2': ['fix heat-on-lightener'],
    'grams-unlikely-sound-1': [],
    'grams-unlikely-wrong-1': ['fix amount-unlikely'],
    'charge-far-wrong-1': ['fix charge-unlikely'],
    'two-heads-wrong-1': ['fix two-heads-at-once'],
    'two-heads-wrong-2': ['fix two-heads-at-once'],
    // By the minutes of the demi it was on too long as well.
    'kinds-in-bowl-wrong-2': ['fix kinds-in-bowl', 'fix past-time'],
  };
  for (const [name, expected] of Object.entries(EXPECTED))
    it(name, () => {
      const loud = foundIn(name).filter((one) => !one.startsWith('mind') || expected.includes(one));
      expect(loud).toEqual(expected);
    });
});
