import { describe, expect, it } from 'vitest';
import { joinSources } from '../../src/journal/journal.ts';
import { readSource } from '../../src/journal/source.ts';
import { withinClient } from '../../src/reckon/client-fault.ts';
import { reckonAll } from '../../src/reckon/visit.ts';
import { findAll } from '../../src/rules/run.ts';

const journalOf = (text: string) => joinSources([readSource('notes.txt', new TextEncoder().encode(text))]);

const letter = (index: number): string => `A${index + 1}`;

/** A visit of so many bowls, each made again from the one below it, so that the first asks for all. */
const inOneVisit = (length: number, first: string): string =>
  [
    'visit 2026-01-05 wren-abbott',
    ...Array.from({ length }, (_, index) => `  again ${letter(index)} from ${letter(index + 1)}`),
    `  ${first.replace('?', letter(length))}`,
  ].join('\n');

const bowlsOf = (text: string) => [...reckonAll(journalOf(text)).values()].flat().flatMap(({ bowls }) => bowls);

describe('long chains', () => {
  it('of bowls in one visit are worked out to the end', () => {
    const bowls = bowlsOf(inOneVisit(3_000, 'bowl ? 40 clay + 60 dev-6'));
    expect(bowls).toHaveLength(3_001);
    expect(bowls.every(({ portions }) => portions.length === 2)).toBe(true);
  });

  it('that end where they began are one circle, told once', () => {
    const bowls = bowlsOf(inOneVisit(3_000, 'again ? from A1'));
    expect(bowls.flatMap(({ problems }) => problems.map(({ kind }) => kind))).toEqual(['again-circle']);
  });

  it('of scaled remakes keep weights that can be written', () => {
    const text = inOneVisit(400, 'bowl ? 40 clay + 60 dev-6').replaceAll(/(again .*)/g, '$1 83%');
    const finest = bowlsOf(text).flatMap(({ portions }) => portions.map(({ weight }) => Number(weight?.d ?? 0)));
    expect(Math.max(...finest)).toBeLessThanOrEqual(1_000_000);
    expect(finest).toHaveLength(802);
  });

  it('cost no other client her findings', () => {
    const { faults } = findAll(journalOf(inOneVisit(3_000, 'again ? from A1')));
    expect(faults).toBeUndefined();
  });
});

describe('a fault in one client', () => {
  it('stays with her', () => {
    const [client] = journalOf('visit 2026-01-05 wren-abbott\n  bowl A 40 clay').clients.values();
    if (client === undefined) throw new Error('no client');
    const fail = (): { readonly visits: number } => {
      throw new RangeError('too deep');
    };
    expect(withinClient(client, fail)).toEqual({
      client: 'wren-abbott',
      full: 'wren-abbott',
      fault: new RangeError('too deep'),
    });
    expect(withinClient(client, () => ({ visits: 1 }))).toEqual({ visits: 1 });
  });
});
