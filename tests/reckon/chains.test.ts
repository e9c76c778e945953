import { describe, expect, it } from 'vitest';
import { CHAINS } from '../../.scripts/growth/chains.ts';
import { joinSources } from '../../src/journal/journal.ts';
import { readSource } from '../../src/journal/source.ts';
import { withinClient } from '../../src/reckon/client-fault.ts';
import { figure } from '../../src/reckon/say.ts';
import { reckonAll } from '../../src/reckon/visit.ts';
import { judge } from '../../src/rules/judging.ts';
import { openSession } from '../../src/rules/session.ts';
import { sum } from '../../src/text/exact.ts';

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
    const { faults } = judge(journalOf(inOneVisit(3_000, 'again ? from A1'))).all();
    expect(faults).toBeUndefined();
  });
});

type ShapeName =
  | 'again across visits'
  | 'again across clients, last to first'
  | 'circle across clients'
  | 'more of more in one visit'
  | 'poured, the last repeated later'
  | 'poured twice, the last repeated later'
  | 'poured, all repeated later, last first'
  | 'again and plus in one visit'
  | 'lines of bowls that are not mixed';

const journalOfShape = (name: ShapeName, n: number) =>
  joinSources(
    Object.entries(CHAINS[name]?.(n) ?? {}).map(([path, text]) => readSource(path, new TextEncoder().encode(text))),
  );

/** The last bowl of the last visit, as `40 clay + 60 dev-6`. */
const lastOf = (name: ShapeName, n: number): string => {
  const bowl = [...reckonAll(journalOfShape(name, n)).values()].at(-1)?.at(-1)?.bowls.at(-1);
  return (bowl?.portions ?? []).map(({ weight, label }) => `${weight && figure(weight)} ${label}`).join(' + ');
};

describe('chains of a thousand links and more', () => {
  it('weigh what the first bowl weighs, across visits and across clients', () => {
    expect(lastOf('again across visits', 1_500)).toBe('40 mask + 4 bond');
    const clients = reckonAll(journalOfShape('again across clients, last to first', 1_500));
    const weights = [...clients.values()].map(([visit]) => visit?.bowls[0]?.portions.map(({ weight }) => weight?.n));
    expect(new Set(weights.map(String))).toEqual(new Set(['40,60']));
    expect(weights).toHaveLength(1_500);
  });

  it('of further mixes of further mixes are one bowl', () => {
    const bowls = [...reckonAll(journalOfShape('more of more in one visit', 1_500)).values()].flat()[0]?.bowls ?? [];
    expect(bowls).toHaveLength(1_500);
    expect(figure(bowls[0]?.mixedWithMore ?? sum([]))).toBe('150000');
  });

  it('of bowls poured into each other come to what was poured', () => {
    // 50 g of 40 to 60 and 10 clay are 30 to 30; 50 of that and 10 clay are 35 to 25.
    expect(lastOf('poured, the last repeated later', 3)).toBe('16.67 clay + 25 dev-6 + 8.33 clay + 10 clay');
    const bowl = [...reckonAll(journalOfShape('poured, the last repeated later', 1_500)).values()].at(-1)?.at(-1)
      ?.bowls[0];
    expect(bowl?.portions.length).toBeLessThan(50);
    expect(figure(bowl?.total ?? sum([]))).toBe('60');
    expect(lastOf('poured twice, the last repeated later', 1_000).split(' + ').length).toBeLessThan(50);
    expect(lastOf('poured, all repeated later, last first', 1_500)).toBe('40 clay + 60 dev-6');
  });

  it('with more on top each time keep to their sums', () => {
    const bowls = [...reckonAll(journalOfShape('again and plus in one visit', 2_000)).values()].flat()[0]?.bowls ?? [];
    expect(figure(bowls.at(-1)?.total ?? sum([]))).toBe(String(100 + 999 * 5));
    expect(Math.max(...bowls.map(({ portions }) => portions.length))).toBeLessThan(50);
  });

  it('in a circle of clients are one finding, and leave others as they were', () => {
    const other = readSource(
      'other.bowl',
      new TextEncoder().encode('visit 2026-01-05 wren-abbott\n  bowl A 40 clay + dev-3'),
    );
    const alone = judge(joinSources([...journalOfShape('circle across clients', 0).sources.values(), other])).all();
    const { findings, faults } = judge(
      joinSources([...journalOfShape('circle across clients', 5_000).sources.values(), other]),
    ).all();
    expect(faults).toBeUndefined();
    const [circle, ...more] = findings.filter(({ rule }) => rule === 'again-circle');
    expect([circle?.message.length, more]).toEqual([expect.any(Number), []]);
    expect(circle?.message.length).toBeLessThan(300);
    expect(findings.filter(({ client }) => client === 'wren-abbott')).toEqual(
      alone.findings.filter(({ client }) => client === 'wren-abbott'),
    );
  });

  it('say of a slip what is near, however long the visit is', () => {
    const { findings } = judge(journalOfShape('lines of bowls that are not mixed', 1_000)).all();
    const slips = findings.filter(({ rule }) => rule === 'bowl-unmixed');
    expect(slips).toHaveLength(500);
    expect(Math.max(...slips.map(({ message, todo }) => message.length + (todo?.length ?? 0)))).toBeLessThan(300);
  });
});

describe('a session', () => {
  it('follows a chain of clients to its end, as a cold check does', () => {
    const mixed = (grams: number): Uint8Array =>
      new TextEncoder().encode(`visit 2026-01-05 ada\n  bowl A ${grams} clay`);
    const again = (client: string, from: string): Uint8Array =>
      new TextEncoder().encode(`visit 2026-01-05 ${client}\n  again A from ${from} 2026-01-05`);
    const session = openSession();
    session.put('a.bowl', mixed(40));
    session.put('b.bowl', again('bea', 'ada'));
    session.put('c.bowl', again('cleo', 'bea'));
    session.put('d.bowl', new TextEncoder().encode('visit 2026-01-05 dot\n  bowl A 5 clay'));
    session.settle();
    session.put('a.bowl', mixed(50));
    const settled = session.settle();
    expect([...settled.redone].sort()).toEqual(['ada', 'bea', 'cleo']);
    expect(settled.reckonedOf('cleo')[0]?.bowls[0]?.total).toEqual({ n: 50, d: 1 });
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
