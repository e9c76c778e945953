import { expect, test } from 'vitest';
import { isClose, type Kind, makeCase, tryCase } from '../../.scripts/fuzz/cases.ts';
import { readCorpus } from '../../.scripts/fuzz/corpus.ts';
import { shrink } from '../../.scripts/fuzz/shrink.ts';
import { builtEntry } from '../journeys/built.ts';
import { LIMIT } from './budget.ts';
import { FOUND } from './found.ts';

const corpus = readCorpus();
const SEED = 20_260_904;

/** So many cases of each kind; `npm run fuzz` tries as many as it is asked to. */
const COURSE: readonly (readonly [Kind, number, string])[] = [
  ['line', 4000, 'a line under a header is read, kept whole, and neatened in white space alone'],
  ['file', 300, 'a file of any bytes is read, kept whole, and neatened in white space alone'],
  ['edit', 150, 'a changed file read again is what it would be read anew'],
  ['chain', 8, 'a chain of remakes, of a length up to 3,000, is worked out to its end'],
  ['journal', 40, 'a journal is reckoned, checked and drawn; findings have their places in the files'],
];

test.each(COURSE)('%s: of %i made at random, %s', { timeout: LIMIT }, (kind, count) => {
  for (let index = 0; index < count; index++) {
    try {
      tryCase(makeCase(SEED, index, corpus, kind), isClose(index));
    } catch (error) {
      throw new Error(`npm run fuzz -- --seed ${SEED} --kind ${kind} --case ${index}`, { cause: error });
    }
  }
});

test.each(FOUND)('once found: $was', async ({ kind, files }) => {
  const bytes = files.map((one) => (typeof one === 'string' ? Buffer.from(one) : Buffer.from(one)));
  tryCase({ kind, files: bytes }, true, await builtEntry());
});

test('every beginning of a conformance example, line by line, is reckoned, checked and drawn', {
  timeout: LIMIT,
}, () => {
  const small = corpus.journals.filter(({ notes: [note = ''] }) => note.length < 500).slice(0, 40);
  expect(small.length).toBeGreaterThan(30);
  for (const { shelf, notes } of small) {
    const [note = ''] = notes;
    for (const { index } of note.matchAll(/\n/g))
      tryCase({ kind: 'journal', files: [...shelf, note.slice(0, index)].map((text) => Buffer.from(text)) }, false);
  }
});

test('the same seed and number make the same case', () => {
  const made = (seed: number, index: number): string => makeCase(seed, index, corpus, 'file').files.join();
  expect(made(1, 9)).toBe(made(1, 9));
  expect(made(1, 9)).not.toBe(made(1, 10));
  expect(made(1, 9)).not.toBe(made(2, 9));
});

test('a failing case is made small, and fails in the same way', () => {
  const files = [Buffer.from('one\ntwo\nthree x0 four\nfive')];
  const small = shrink({ kind: 'file', files }, ({ files: [bytes = Buffer.alloc(0)] }) =>
    bytes.includes('x0') ? `fails at ${bytes.length}` : undefined,
  );
  expect(String(small.files)).toBe('x0');
});
