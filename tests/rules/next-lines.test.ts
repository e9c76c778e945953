import { describe, expect, test } from 'vitest';
import { nextOf, promisedBy } from '../../src/reckon/ahead/due-window.ts';
import { reckonAll } from '../../src/reckon/visit.ts';
import { journalOf } from '../reckon/journal-of.ts';
import { rulesIn } from './compile.ts';

const visitWith = (...lines: readonly string[]) => {
  const [visit] =
    reckonAll(
      journalOf(`client wren-abbott\nvisit 2026-09-04 wren-abbott\n${lines.map((line) => `  ${line}\n`).join('')}`),
    ).get('wren-abbott') ?? [];
  if (visit === undefined) throw new Error('no visit');
  return visit;
};

describe('several next lines', () => {
  test('all count: a change without a time goes with the time', () => {
    const next = nextOf(visitWith('next A -20%', 'next 6w roots', 'next "bring a picture"'));
    expect(next?.changes.map(({ text }) => text)).toEqual(['A -20%', 'roots']);
    expect(next?.says?.text).toBe('bring a picture');
    expect(next?.wait?.value).toBe(6);
  });

  test('she is awaited at the soonest, and what is for later stays in its line', () => {
    const visit = visitWith('next 12w foils', 'next 6w roots');
    expect(promisedBy(visit)?.first).toBe('2026-10-16');
    expect(nextOf(visit)?.changes.map(({ text }) => text)).toEqual(['roots']);
  });
});

describe('next-unclear', () => {
  const found = (line: string): boolean =>
    rulesIn(`
      range gloss "Tidewater gloss" demi
      client wren-abbott "Wren Abbott"
      visit 2026-09-04 wren-abbott
        charge beard tidy 20
        paid 20 card
        result roots 6
        ${line}`).includes('next-unclear');

  test.each(['next zzz qqq', 'next zzz'])('finds `%s`', (line) => {
    expect(found(line)).toBe(true);
  });

  test.each([
    'next 6w zzz',
    'next roots',
    'next gloss',
    'next tidy',
    'next softer through the nape',
    'next "zzz qqq"',
    'next A -20%',
    'next etwas heller vorne',
    'next from 2026-12-02',
  ])('is silent at `%s`', (line) => {
    expect(found(line)).toBe(false);
  });
});
