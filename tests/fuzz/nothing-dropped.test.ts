import { describe, expect, test } from 'vitest';
import { joinSources } from '../../src/journal/journal.ts';
import { readSource } from '../../src/journal/source.ts';
import { BODY_WORDS, type BodyWord } from '../../src/notation/words.ts';
import { judge } from '../../src/rules/judging.ts';
import { WORD_EXAMPLES } from '../grammar/word-examples.ts';

/**
 * No part of a line is dropped in silence: a nonsense word put behind a line, or in the place of one of its words, gives
 * a finding on that line, or stands where the word takes text.
 */

const NONSENSE = 'zzqx';

/** Words whose whole line is text. */
const TEXT: ReadonlySet<string> = new Set(['aim', 'care', 'caution', 'note', 'photo']);

/** Words that take any words somewhere in their line, and why. */
const WORDS: Readonly<Record<string, string>> = {
  hair: 'how the hair is, in the hand’s own words',
  allergy: 'what she is allergic to',
  avoid: 'what she does not want',
  consent: 'what was agreed to',
  asked: 'what was asked about',
  history: 'what was done before',
  natural: 'what is seen',
  grey: 'what is seen',
  start: 'what is seen',
  want: 'what is wanted',
  check: 'what is seen',
  result: 'what is seen',
  test: 'what was seen in the test',
  reaction: 'what was felt and seen',
  stopped: 'what was felt and seen',
  declined: 'what was refused',
  charge: 'the name of a service',
  paid: 'how it was paid',
  place: 'how it goes, in words',
  heat: 'how it was done, in words',
  wash: 'how it was done, in words',
  rinse: 'how it was done, in words',
  dry: 'how it was done, in words',
  cut: 'how it was done, in words',
  home: 'a shade, of what has none declared',
  tones: 'what the salon calls a tone',
  shades: 'the names of shades',
  pattern: 'how the hair grows',
  next: 'what to do next, beside a time or a service',
};

/** Where a line gives a thing its name: a lot, a measure, a place. */
const NAMES = /^(lot|measure|zone) /;

const on = '2026-11-30';

const findingsOn = (lines: readonly string[], line: number): string[] => {
  const journal = joinSources([readSource('notes.bowl', Buffer.from(lines.join('\n')))]);
  return judge(journal, on)
    .all()
    .findings.filter(({ place, also }) =>
      [place, ...(also ?? []).map((one) => one.place)].some((at) => at.line === line),
    )
    .map(({ rule, message }) => `${rule}: ${message}`);
};

const exampleOf = (word: BodyWord): { lines: string[]; at: number } => {
  const lines = WORD_EXAMPLES[word].split('\n');
  const at = lines.findIndex((line) => line.startsWith('>'));
  lines[at] = (lines[at] ?? '').replace('>', ' ');
  return { lines, at };
};

const words = (Object.keys(BODY_WORDS) as BodyWord[]).filter((word) => !TEXT.has(word));

describe.each(words)('%s', (word) => {
  const { lines, at } = exampleOf(word);
  const line = lines[at] ?? '';
  const put = (text: string): string[] => findingsOn(lines.with(at, text), at);
  const before = put(line);
  const isNew = (text: string): boolean => put(text).some((one) => !before.includes(one));

  test('a word behind the line is found, or is text by definition', () => {
    if (WORDS[word] !== undefined || word === 'zone') return;
    const bare = line.replace(/\s*"[^"]*"\s*$/, '');
    expect(isNew(`${bare} ${NONSENSE}`), `${bare} ${NONSENSE}`).toBe(true);
  });

  test('a nonsense word in the place of each word is found, or is text by definition', () => {
    if (WORDS[word] !== undefined) return;
    const tokens = line.trim().split(/ (?=(?:[^"]*"[^"]*")*[^"]*$)/);
    const silent = tokens
      .map((token, index) => ({ token, text: `  ${tokens.with(index, NONSENSE).join(' ')}`, index }))
      .filter(({ index, token }) => index > 0 && !token.startsWith('"') && !NAMES.test(`${tokens[index - 1]} ${token}`))
      .filter(({ text }) => !isNew(text))
      .map(({ text }) => text);
    expect(silent).toEqual([]);
  });
});
