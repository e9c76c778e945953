import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { joinSources } from '../../../src/journal/journal.ts';
import { readSource } from '../../../src/journal/source.ts';
import { findAll } from '../../../src/rules/run.ts';

/**
 * Notes on skin and metal that were written without sight of the rules, and surprised us. Their first line says what was
 * expected; where we chose otherwise, the reason stands beside it.
 */

const FOLDER = 'tests/cases/topics/skin';
const SHELF = ['0-salon', '0-colour', '0-rest', '0-extra'];

const source = (name: string) => readSource(`${name}.bowl`, readFileSync(`${FOLDER}/${name}.bowl`));

const loud = (name: string): string[] =>
  findAll(joinSources([...SHELF, name].map(source)), undefined, '2026-11-30')
    .findings.filter(({ reason }) => reason === undefined)
    .map(({ severity, rule }) => `${severity} ${rule}`);

test.each([
  ['cross-reaction-sound-2', []],
  ['cross-reaction-wrong-1', ['stop allergy-named']],
  ['cross-reaction-wrong-2', ['stop allergy-named']],
  ['illness-sound-2', []],
  // Expected a fix; a colourist cannot know whether this medicine matters, so it is only asked.
  ['illness-wrong-2', ['mind medicine-since-test']],
  ['metal-salts-wrong-1', ['stop metal-under-peroxide']],
  // Expected a stop; henna may be pure, so it stays a fix until words of metal stand beside it.
  ['metal-salts-wrong-2', ['fix metal-under-peroxide', 'fix result-beyond-look']],
  ['test-under-hold-sound-1', []],
])('%s', (name, found) => {
  expect(loud(name)).toEqual(found);
});
