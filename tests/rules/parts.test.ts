import { describe, expect, test } from 'vitest';
import { joinSources } from '../../src/journal/journal.ts';
import { readSource } from '../../src/journal/source.ts';
import { placeInBowl } from '../../src/reckon/bowl/contents.ts';
import { lineAt, lineName, wordsPlace } from '../../src/reckon/cite.ts';
import { endOf } from '../../src/reckon/timing/timed-runs.ts';
import { reckonAll } from '../../src/reckon/visit.ts';
import { exampleLines, readExample } from '../../src/rules/example.ts';

const journal = joinSources([
  readSource(
    'a/b/notes.bowl',
    new TextEncoder().encode(
      'client wren-abbott "Wren Abbott"\nvisit 2026-09-04 wren-abbott\nbowl A\non 14:00 A\noff 14:20 A\non 14:30 A\n',
    ),
  ),
]);
const [visit] = reckonAll(journal).get('wren-abbott') ?? [];

describe('where a finding points', () => {
  test('a file is named by its own name, with the line as editors count it', () => {
    expect(lineName('a/b/notes.bowl', 0)).toBe('notes.bowl:1');
    expect(lineName('a\\b\\notes.bowl', 9)).toBe('notes.bowl:10');
    expect(lineName('notes.bowl', 1)).toBe('notes.bowl:2');
  });

  test('a line that the journal lacks is empty', () => {
    expect(lineAt(journal, { file: 'a/b/notes.bowl', line: 2 })).toBe('bowl A');
    expect(lineAt(journal, { file: 'a/b/notes.bowl', line: 99 })).toBe('');
    expect(lineAt(journal, { file: 'elsewhere.bowl', line: 0 })).toBe('');
  });

  test('words that do not stand there leave the place as it was', () => {
    const place = { file: 'a/b/notes.bowl', line: 2, at: 5 };
    expect(wordsPlace(journal, place, /total/)).toBe(place);
  });

  test('a bowl without parts is its own place', () => {
    const [bowl] = visit?.bowls ?? [];
    expect(bowl && placeInBowl(bowl, () => true)).toBe(bowl?.place);
  });

  test('a run ends where it came off, or where it went on while it has not', () => {
    const [first, second] = visit?.clock.runs ?? [];
    expect(first && endOf(first).line).toBe(4);
    expect(second && endOf(second).line).toBe(5);
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
