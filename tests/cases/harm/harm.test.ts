import { expect, test } from 'vitest';
import { seenAsHarm, sentencesOf } from './placed.ts';

/** Two hundred sentences each, written without sight of the reading; the seeds deal them out to every word that takes text. */
const SEEDS = [20261201, 7, 1964, 2];

/** What was reached when the reading was last mended; it may get better and not worse. */
const MOST_MISSED = 2;
const MOST_FALSE = 2;

test.each(SEEDS)('sentences of harm are seen in whatever word they stand, seed %i', (seed) => {
  const all = sentencesOf('harm.tsv');
  expect(all).toHaveLength(200);
  const seen = seenAsHarm(all, seed);
  const missed = all.filter(({ id }) => !seen.has(id)).map(({ id, text }) => `${id} ${text}`);
  expect(missed.length, missed.join('\n')).toBeLessThanOrEqual(MOST_MISSED);
});

test.each(SEEDS)('sentences that only look alike are not called harm, seed %i', (seed) => {
  const all = sentencesOf('alike.tsv');
  expect(all).toHaveLength(200);
  const seen = seenAsHarm(all, seed);
  const wrong = all.filter(({ id }) => seen.has(id)).map(({ id, text }) => `${id} ${text}`);
  expect(wrong.length, wrong.join('\n')).toBeLessThanOrEqual(MOST_FALSE);
});
