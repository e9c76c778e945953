import { describe, expect, test } from 'vitest';
import { joinSources } from '../../src/journal/journal.ts';
import { readSource } from '../../src/journal/source.ts';
import { inWords } from '../../src/journal/where.ts';
import { placeInBowl } from '../../src/reckon/bowl/contents.ts';
import { lineAt, wordsPlace } from '../../src/reckon/cite.ts';
import { endOf } from '../../src/reckon/timing/timed-runs.ts';
import { reckonAll } from '../../src/reckon/visit.ts';
import { exampleLines, readExample } from '../../src/rules/example.ts';
import { lineName } from '../../src/text/sentence.ts';
import { wholeFile } from '../../src/text/span.ts';

const journal = joinSources([
  readSource(
    'a/b/notes.bowl',
    new TextEncoder().encode(
      'client wren-abbott "Wren Abbott"\nvisit 2026-09-04 wren-abbott\nbowl A\non 14:00 A\noff 14:20 A\non 14:30 A\n',
    ),
  ),
]);
const [visit] = reckonAll(journal).get('wren-abbott') ?? [];
const STOOD = visit?.visit ?? wholeFile('');

describe('where a finding points', () => {
  test('a file is named by its own name, with the line as editors count it', () => {
    const named = (file: string, line: number) => inWords(journal, lineName({ in: wholeFile(file), line }));
    expect(named('a/b/notes.bowl', 0)).toBe('notes.bowl:1');
    expect(named('a\\b\\notes.bowl', 9)).toBe('notes.bowl:10');
    expect(named('notes.bowl', 1)).toBe('notes.bowl:2');
  });

  test('a line that the journal lacks is empty', () => {
    expect(lineAt(journal, { in: STOOD, line: 1 })).toBe('bowl A');
    expect(lineAt(journal, { in: STOOD, line: 99 })).toBe('');
    expect(lineAt(journal, { in: wholeFile('elsewhere.bowl'), line: 0 })).toBe('');
  });

  test('words that do not stand there leave the place as it was', () => {
    const place = { in: STOOD, line: 1, at: 5 };
    expect(wordsPlace(journal, place, /total/)).toBe(place);
  });

  test('a bowl without parts is its own place', () => {
    const [bowl] = visit?.bowls ?? [];
    expect(bowl && placeInBowl(bowl, () => true)).toBe(bowl?.place);
  });

  test('a run ends where it came off, or where it went on while it has not', () => {
    const [first, second] = visit?.clock.runs ?? [];
    expect(first && endOf(first).line).toBe(3);
    expect(second && endOf(second).line).toBe(4);
  });
});

describe('an example', () => {
  const typed = `
    client wren-abbott

      natural 6
      ^^^^^^^
    `;
  test('loses the indentation it shares and its blank ends', () => {
    expect(exampleLines(typed)).toEqual(['client wren-abbott', '', '  natural 6', '  ^^^^^^^']);
  });

  test('has carets that mark the line above them', () => {
    expect(readExample(typed)).toEqual({
      lines: ['client wren-abbott', '', '  natural 6'],
      carets: { line: 2, from: 2, to: 9 },
    });
  });

  test('may have none', () => {
    expect(readExample('natural 6').carets).toBeUndefined();
  });
});
