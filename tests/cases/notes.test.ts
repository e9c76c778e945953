import { describe, expect, test } from 'vitest';
import { foundIn, notesIn } from './judge.ts';
import { LOUD, MILDER } from './verdicts.ts';

const FOLDERS = ['given', 'fresh/sound', 'fresh/wrong', 'topics'] as const;
const NOTES = FOLDERS.flatMap((folder) => notesIn(folder).map((note) => ({ folder, ...note })));

const RANK = ['mind', 'fix', 'stop'] as const;
const rankOf = (found: string): number => RANK.findIndex((one) => found.startsWith(one));

describe.each(NOTES)('$name', ({ name, is, expected }) => {
  const { loud, minds } = foundIn(name);

  test('gets what it ought to above a `mind`, and nothing else', () => {
    expect(loud).toEqual(LOUD[name] ?? []);
  });

  if (is === 'wrong')
    test('is told as loudly as a good colleague would, or why not', () => {
      // `stop or fix`: either will do.
      const [said = ''] = expected.split(/ [|(]/);
      const asked = Math.min(...said.split(' or ').map(rankOf));
      const told = Math.max(-1, ...[...loud, ...minds].map(rankOf));
      if (MILDER[name] === undefined) expect(told).toBeGreaterThanOrEqual(asked);
      else expect(told).toBeLessThan(asked);
    });
});

test('of thirty sound and unusual notes none is shouted at, and few are needlessly minded', () => {
  const sound = NOTES.filter(({ folder }) => folder === 'fresh/sound').map(({ name, expected }) => ({
    expected,
    ...foundIn(name),
  }));
  expect(sound).toHaveLength(30);
  expect(sound.flatMap(({ loud }) => loud)).toEqual([]);
  const needless = sound.filter(({ expected }) => expected.startsWith('nothing')).flatMap(({ minds }) => minds);
  expect(needless.length).toBeLessThanOrEqual(5);
});

test('of thirty wrong notes at least 27 are seen', () => {
  const wrong = NOTES.filter(({ folder }) => folder === 'fresh/wrong').map(({ name }) => foundIn(name));
  expect(wrong).toHaveLength(30);
  expect(wrong.filter(({ loud, minds }) => loud.length + minds.length > 0).length).toBeGreaterThanOrEqual(27);
});

test('what is said of notes is said of notes that are there', () => {
  const names = new Set(NOTES.map(({ name }) => name));
  expect([...Object.keys(LOUD), ...Object.keys(MILDER)].filter((name) => !names.has(name))).toEqual([]);
});
