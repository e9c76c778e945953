import { describe, expect, it } from 'vitest';
import { plannedIn } from '../../src/reckon/ahead/due-window.ts';
import { type AskedVisit, askedVisit } from '../../src/reckon/ahead/service-asked.ts';
import { reckonClient } from '../../src/reckon/visit.ts';
import { clientOf, journalOf, SHELF } from '../pages/compiled.ts';

const LIGHTS = `visit 2026-03-02 ada
  bowl A 20 clay + 40 dev-6
  bowl G 20 tone 9/1 + 40 dev-6
  place A top weave x6 foil
  place G lengths comb-through
  charge half-head 80
  charge tone 20
`;
const LOW = `visit 2026-05-04 ada
  bowl L 20 cream 6/4 + 30 dev-6
  place L lengths weave x8 foil
  charge lowlights 60
  charge discount 10%
  charge total 54
`;
const ROOTS = `visit 2026-06-01 ada
  bowl R 20 cream 6/0 + 30 dev-6
  place R roots apply on-scalp
`;

const asked = (notes: string, next: string): AskedVisit | undefined => {
  const tone = 'range tone "Larkfield tone" toner\n';
  const journal = journalOf(`${SHELF}${tone}client ada "Ada"\n${notes}  next ${next}\n`);
  const visits = reckonClient(journal, clientOf(journal, 'ada'));
  return askedVisit(plannedIn(visits), visits);
};

const found = (notes: string, next: string): string | undefined => {
  const one = asked(notes, next);
  return one && `${one.visit.date} ${one.services.join('+')} without ${[...one.others].join(',')}`;
};

describe('the last visit like the service asked for', () => {
  it('lightened in foils where foils are asked for, and not low lights in foil', () => {
    expect(found(LIGHTS + LOW, '8w foils')).toBe('2026-03-02 foils without G');
  });

  it('charged for the service by name', () => {
    expect(found(LIGHTS + LOW + ROOTS, '8w half head')).toBe('2026-03-02 half head without G');
    expect(found(LIGHTS + LOW + ROOTS, '8w lowlights')).toBe('2026-05-04 lowlights without ');
  });

  it('leaves out none of its bowls where it would leave out all', () => {
    const toned = LIGHTS.replace(/ {2}bowl A .*\n/, '').replace(/ {2}place A .*\n/, '');
    expect(found(toned, '8w half head')).toBe('2026-03-02 half head without ');
  });

  it('did it by a place, a technique, a product or its kind', () => {
    expect(found(LIGHTS + LOW + ROOTS, '8w roots')).toBe('2026-06-01 roots without ');
    expect(found(LIGHTS + ROOTS, '8w weave')).toBe('2026-03-02 weave without G');
    expect(found(LIGHTS + ROOTS, '8w lightener')).toBe('2026-03-02 lightener without G');
    expect(found(LIGHTS + ROOTS, '8w toner')).toBe('2026-03-02 toner without A');
  });

  it('did the most of what is asked for', () => {
    expect(found(LIGHTS + LOW + ROOTS, '8w foils, tone')).toBe('2026-03-02 foils+tone without ');
    expect(found(LIGHTS + LOW + ROOTS, '8w roots, tone')).toBe('2026-03-02 roots+tone without ');
  });

  it('is none where nothing is asked for, only a bowl is changed, or nothing like it was done', () => {
    expect(found(LIGHTS, '8w')).toBeUndefined();
    expect(found(LIGHTS, '8w A -20%')).toBeUndefined();
    expect(found(LIGHTS, '8w temples first')).toBeUndefined();
    expect(askedVisit(undefined, [])).toBeUndefined();
  });
});
