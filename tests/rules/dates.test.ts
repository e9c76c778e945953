import { describe, expect, test } from 'vitest';
import { joinSources } from '../../src/journal/journal.ts';
import { readSource } from '../../src/journal/source.ts';
import { judge } from '../../src/rules/judging.ts';
import { findIn, rulesIn, saidIn } from './compile.ts';

const CLIENT = 'client wren-abbott "Wren Abbott"\n';

const visits = (...days: string[]): string =>
  CLIENT + days.map((day) => `visit ${day} wren-abbott\ncut by io\n`).join('');

/** Findings of several files, checked on a day or on none. */
const across = (files: Readonly<Record<string, string>>, on?: string): string[] => {
  const journal = joinSources(
    Object.entries(files).map(([path, text]) => readSource(path, new TextEncoder().encode(text))),
  );
  return judge(journal, on)
    .all()
    .findings.map(({ rule }) => rule);
};

describe('date-out-of-order', () => {
  test.each([
    ['in order', ['2025-01-10', '2025-03-10', '2025-05-10', '2025-07-10']],
    ['newest first', ['2025-07-10', '2025-05-10', '2025-03-10', '2025-01-10']],
    ['in no order at all', ['2025-07-10', '2025-01-10', '2025-09-10', '2025-02-10', '2025-05-10']],
    ['too few to keep an order', ['2025-03-10', '2025-05-10', '2024-07-10']],
    ['off by some weeks', ['2025-01-10', '2025-05-10', '2025-04-10', '2025-07-10']],
    ['swapped, and either could be the one', ['2025-01-10', '2025-09-10', '2025-05-10', '2025-10-10']],
    ['three of one day, and one long after', ['2025-01-10', '2025-01-10', '2025-01-10', '2025-07-10']],
    ['of one day', ['2025-01-10', '2025-03-10', '2025-03-10', '2025-07-10']],
  ])('is silent of visits %s', (_, days) => {
    expect(rulesIn(visits(...days))).not.toContain('date-out-of-order');
  });

  test.each([
    ['another year', ['2025-11-10', '2025-12-10', '2025-01-10', '2026-03-10'], '2026-01-10'],
    ['the first', ['2026-11-10', '2025-12-10', '2026-01-10', '2026-03-10'], '2025-11-10'],
    ['the last', ['2025-10-10', '2025-11-10', '2025-12-10', '2024-12-20'], '2025-12-20'],
    ['newest first', ['2026-05-10', '2026-03-10', '2025-01-10', '2025-11-10', '2025-09-10'], '2026-01-10'],
  ])('offers the year that puts it right: %s', (_, days, put) => {
    const found = findIn(visits(...days)).findings.find(({ rule }) => rule === 'date-out-of-order');
    expect(found?.todo).toBe(`Write \`${put}\`.`);
    expect(found?.mend?.edits.map((edit) => edit.put)).toEqual([put]);
  });

  test('offers none where no year does', () => {
    const [found] = findIn(visits('2025-01-10', '2025-02-10', '2024-08-10', '2025-04-10', '2025-05-10')).findings;
    expect(found?.message).toBe(
      '2024-08-10 stands between 2025-02-10 and 2025-04-10 in a list that is in order of date.',
    );
    expect(found?.todo).toBe('Correct the date, or move the visit to its place.');
    expect(found?.mend).toBeUndefined();
  });

  test('names only the neighbours it has', () => {
    const messages = (...days: string[]): string[] => saidIn(visits(...days)).map((text) => text.slice(24));
    expect(messages('2026-11-10', '2025-12-10', '2026-01-10', '2026-03-10')).toEqual([
      '2026-11-10 stands beside 2025-12-10 in a list that is in order of date.',
    ]);
    expect(messages('2025-10-10', '2025-11-10', '2025-12-10', '2024-12-20')).toEqual([
      '2024-12-20 stands beside 2025-12-10 in a list that is in order of date.',
    ]);
  });

  test('takes each file by itself', () => {
    const [a, b] = [visits('2025-01-10', '2025-03-10', '2025-05-10', '2025-07-10'), visits('2024-02-10')];
    expect(across({ 'a.bowl': a, 'b.bowl': b })).toEqual([]);
  });
});

describe('same-visit-twice', () => {
  test.each([
    ['a line more', 'visit 2026-09-04 wren-abbott\ncut\nvisit 2026-09-04 wren-abbott\ncut\ndry\n'],
    ['another time', 'visit 2026-09-04 9:00 wren-abbott\ncut\nvisit 2026-09-04 14:00 wren-abbott\ncut\n'],
    ['another day', 'visit 2026-09-04 wren-abbott\ncut\nvisit 2026-10-04 wren-abbott\ncut\n'],
  ])('is silent with %s', (_, text) => {
    expect(rulesIn(CLIENT + text)).toEqual([]);
  });

  test('takes white space, blank lines and capitals for nothing', () => {
    const text = 'visit 2026-09-04 wren-abbott\ncut\n\nVisit 2026-09-04  wren-abbott\n\n  CUT\n';
    expect(rulesIn(CLIENT + text)).toEqual(['same-visit-twice']);
  });

  test('names the file of the first', () => {
    const text = `${CLIENT}visit 2026-09-04 wren-abbott\ncut\n`;
    expect(across({ 'a.bowl': text, 'b.bowl': text.replace(CLIENT, '') })).toEqual(['same-visit-twice']);
  });
});

describe('visit-in-future', () => {
  const DONE = `${CLIENT}visit 2026-09-04 wren-abbott\nresult lengths even\n`;

  test.each([
    ['on the day itself', DONE, '2026-09-04'],
    ['when no day is given', DONE, undefined],
    ['for a visit that is only planned', DONE.replace('result lengths even', 'note foils'), '2026-09-03'],
  ])('is silent %s', (_, text, on) => {
    expect(across({ 'a.bowl': text }, on)).toEqual([]);
  });

  test('fires the day before', () => {
    expect(across({ 'a.bowl': DONE }, '2026-09-03')).toEqual(['visit-in-future']);
  });
});
