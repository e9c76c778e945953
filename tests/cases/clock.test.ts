import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { joinSources } from '../../src/journal/journal.ts';
import { readSource } from '../../src/journal/source.ts';
import { findAll } from '../../src/rules/run.ts';

/** Notes of times, rests and money that were once judged wrongly; their first lines say what is expected. */

const FOLDER = new URL('./topics/', import.meta.url);
const DAY = '2026-11-30';

/** What each note is to give, as `severity rule`. */
const EXPECTED: Readonly<Record<string, readonly string[]>> = {
  's01-colour-pulled-through': [],
  's03-mans-blend-short': [],
  's04-bleach-wash': [],
  's05-presoften': [],
  's06-double-pigment': ['mind ratio-off-mix'],
  'f05-rest-kept-for-the-back': [],
  'f07-one-minute-over': ['fix past-time'],
  'lightener-idle-sound-2': [],
  'deposit-sound-2': [],
  'deposit-wrong-1': ['fix deposit-not-taken'],
  'deposit-wrong-2': ['fix deposit-unused'],
  'toner-dark-wrong-1': ['fix toner-over-dark', 'mind result-beyond-look'],
  'toner-dark-wrong-2': ['fix toner-over-dark', 'fix result-beyond-look'],
  'short-grey-wrong-2': ['mind under-time'],
};

const shelf = readdirSync(FOLDER).filter((name) => name.startsWith('0-'));
const sourceOf = (name: string) => readSource(name, readFileSync(new URL(name, FOLDER)));

describe('judged as its first line says', () => {
  test.each(Object.entries(EXPECTED))('%s', (name, expected) => {
    const file = `${name}.bowl`;
    const { findings } = findAll(joinSources([...shelf, file].map(sourceOf)), undefined, DAY);
    const own = findings.filter(({ place }) => place.file === file);
    expect(own.map(({ severity, rule }) => `${severity} ${rule}`)).toEqual(expected);
  });
});
