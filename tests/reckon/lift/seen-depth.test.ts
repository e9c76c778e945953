import { describe, expect, it } from 'vitest';
import { depthSeen } from '../../../src/reckon/lift/seen-depth.ts';
import { journalOf } from '../journal-of.ts';

/** What a check's words mean: `[low, high]`. */
const spanOf = (words: string, stagesOnly = false): readonly number[] | undefined => {
  const facts = journalOf(`visit 2026-09-04 wren-abbott\ncheck 10:00 A roots ${words}`).clients.get('wren-abbott')
    ?.visits[0]?.entry.facts;
  const fact = facts?.[0];
  const seen = fact?.word === 'check' ? fact.seen[0] : undefined;
  const span = seen && depthSeen(seen, stagesOnly);
  return span && [span.low, span.high];
};

describe('the depths that a look can mean', () => {
  it.each([
    ['orange', [5, 5]],
    ['orange-gold', [6, 6]],
    ['orange-yellow', [7, 7]],
    ['orange to yellow', [5, 9]],
    ['yellow to orange', [5, 9]],
    ['gold?', [6, 8]],
    ['black-brown?', [1, 1.5]],
    ['white?', [10, 10]],
    ['7', [7, 7]],
    ['6½', [6.5, 6.5]],
    ['7+', [7, 7.5]],
    ['9-8', [8, 9]],
    ['~8', [7.5, 8.5]],
    ['8 gold', [7, 7]],
  ])('%s', (words, span) => {
    expect(spanOf(words)).toEqual(span);
  });

  it('are none without stage or depth, or for a depth where a stage is asked for', () => {
    expect(spanOf('warm')).toBeUndefined();
    expect(spanOf('8', true)).toBeUndefined();
    expect(spanOf('gold', true)).toEqual([7, 7]);
  });

  it('are none for a stage that is not of the notation', () => {
    expect(depthSeen({ zones: [], words: [], at: 0, stage: { stage: 'beige', at: 0 } })).toBeUndefined();
  });
});
