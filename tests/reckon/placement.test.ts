import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Placed, type Placement, placementOf, type SectionCount } from '../../src/reckon/head/placement.ts';
import { lastOf } from './reckoned.ts';

const placementIn = (lines: string, head = ''): Placement =>
  placementOf(
    lastOf(`client wren-abbott\n${head}\nvisit 2026-09-04 wren-abbott
bowl A 40 clay + 80 dev-6
bowl B 40 clay + 80 dev-6
bowl L 30 cream 6/0 + 45 dev-6
${lines}`),
  );

const counts = (list: readonly SectionCount[]): string =>
  list.map(({ name, sections }) => `${name} ${sections}`).join(', ');

const firstOf = ({ placed }: Placement): Placed => placed[0] as Placed;

const share = (lines: string, head = ''): string => {
  const { lightened } = placementIn(lines, head);
  return lightened === undefined
    ? 'none'
    : `${lightened.least}-${lightened.most}${lightened.without.map((zone) => ` without ${zone}`).join('')}`;
};

describe('the counts of a placement', () => {
  it('doubles what is mirrored', () => {
    const { byBowl, byZone, byTechnique, sections } = placementIn(
      'place A hairline slice x2 gap 0 mirror\nplace A top weave x6',
    );
    expect(sections).toBe(10);
    expect(counts(byBowl)).toBe('A 10');
    expect(counts(byZone)).toBe('hairline 4, top 6');
    expect(counts(byTechnique)).toBe('slice 4, weave 6');
  });

  it('deals sections to bowls in their turn', () => {
    expect(counts(placementIn('place A+B back weave x28 turn A B A').byBowl)).toBe('A 19, B 9');
    expect(counts(placementIn('place A+L back weave x15 turn A L A').byBowl)).toBe('A 10, L 5');
  });

  it('begins the turn anew on each side of a mirrored line', () => {
    expect(counts(placementIn('place A+B sides weave x3 mirror turn A B').byBowl)).toBe('A 4, B 2');
  });

  it('leaves sections unshared where two bowls take no turns', () => {
    const placement = placementIn('place A+B back weave x8');
    expect(placement.byBowl).toEqual([]);
    expect(placement.sections).toBe(8);
  });

  it('gives nothing to a bowl whose turn does not come', () => {
    expect(counts(placementIn('place A+B back weave x1 turn A B').byBowl)).toBe('A 1');
    expect(counts(placementIn('place A+B back weave x0 turn A B').byBowl)).toBe('');
  });

  it('counts sections whose technique, place or bowl is not noted', () => {
    const { byTechnique, byZone, byBowl, placed } = placementIn('place A x6\nplace top weave x4');
    expect(counts(byTechnique)).toBe('weave 4');
    expect(counts(byZone)).toBe('no place named 6, top 4');
    expect(counts(byBowl)).toBe('A 6');
    expect(placed.map(({ place }) => place.at === 0)).toEqual([false, true]);
  });

  it('leaves out a gap that is no length', () => {
    expect(firstOf(placementIn('place A top weave x6 gap 10p')).gap).toBeUndefined();
  });

  it('takes a distance from the scalp for off the scalp', () => {
    const scalps = ['1cm', 'on-scalp', ''].map((how) => firstOf(placementIn(`place A top weave x6 ${how}`)).scalp);
    expect(scalps).toEqual(['off', 'on', undefined]);
  });

  it('keeps what is left out for a reason that names no place', () => {
    expect(placementIn('leave "the patch she asked about"').left).toEqual([
      { places: [], says: 'the patch she asked about', place: expect.objectContaining({ at: 0 }) },
    ]);
  });

  it('deals out every section, whatever the turn', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 60 }),
        fc.array(fc.constantFrom('A', 'B', 'L'), { minLength: 1, maxLength: 5 }),
        fc.boolean(),
        (count, turn, mirror) => {
          const { byBowl, sections } = placementIn(
            `place ${[...new Set(turn)].join('+')} back weave x${count}${mirror ? ' mirror' : ''} turn ${turn.join(' ')}`,
          );
          expect(byBowl.reduce((sum, one) => sum + one.sections, 0)).toBe(count * (mirror ? 2 : 1));
          expect(sections).toBe(count * (mirror ? 2 : 1));
        },
      ),
      { numRuns: 60 },
    );
  });

  it('takes gaps in millimetres', () => {
    const gaps = ['gap 0', 'gap 10mm', 'gap 1cm', 'gap 0.5in', ''].map(
      (gap) => firstOf(placementIn(`place A top weave x6 ${gap}`)).gap,
    );
    expect(gaps).toEqual([
      { least: 0, most: 0 },
      { least: 10, most: 10 },
      { least: 10, most: 10 },
      { least: 12.7, most: 12.7 },
      undefined,
    ]);
  });
});

describe('what a placement says besides', () => {
  it('places a bowl by the clock where no line places it, and never twice', () => {
    const { placed } = placementIn(
      'place A top weave x6\non 14:00 A top\non 14:20 L roots, ends\noff 14:50 A\noff 14:50 L',
    );
    expect(
      placed.map(({ bowls, places, fact }) => [bowls.join(), places.map(({ zone }) => zone).join(), fact?.word]),
    ).toEqual([
      ['A', 'top', 'place'],
      ['L', 'roots,ends', undefined],
    ]);
  });

  it('tells the order by the clock, not by the lines', () => {
    const { order } = placementIn('on 14:30 L ends\non 14:00-14:10 A top, crown\noff 15:00');
    expect(order.map(({ at, on }) => [at, on.map(({ bowl, zone }) => `${bowl} ${zone}`).join(', ')])).toEqual([
      [840, 'A top, A crown'],
      [870, 'L ends'],
    ]);
  });

  it('keeps what was left out, with the reason', () => {
    const { left } = placementIn('leave crown, ends "stands up"');
    expect(left.map(({ places, says }) => [places.map(({ zone }) => zone).join(), says])).toEqual([
      ['crown,ends', 'stands up'],
    ]);
  });
});

describe('the share of the head lightened', () => {
  it('is the shares of the areas where all of them is taken', () => {
    expect(share('place A top apply')).toBe('14-14');
    expect(share('place A top, crown apply')).toBe('26-26');
    expect(share('place A all apply')).toBe('100-100');
    expect(share('place A lengths, ends apply')).toBe('100-100');
    expect(share('place A back left apply')).toBe('7-7');
  });

  it('goes by count, depth of a section and the hair taken', () => {
    // top is 14 % and 100 mm deep, so 91 mm wide: ten slices of 2 to 5 mm, 60 to 91 mm wide, are 13 to 50 % of it.
    expect(share('place A top slice x10')).toBe('2-7');
    // the same ten as weaves, of which 40 to 60 % is taken: 0.74 to 4.2 %.
    expect(share('place A top weave x10')).toBe('1-4');
    // sides are 17 % and 70 mm deep on each side; x5 mirrored is 10 over 140 mm.
    expect(share('place A sides slice x5 mirror')).toBe('2-6');
    expect(share('place A sides slice x10')).toBe('2-6');
    // across the middle a mirrored section is half as wide, so x5 mirrored reaches as deep as x5.
    expect(share('place A top slice x5 mirror')).toBe(share('place A top slice x5'));
  });

  it('takes no foil to run right across an area wider than a foil', () => {
    // back is 14 %, 60 mm deep and so 152 mm wide: twelve slices of 2 to 5 mm by 60 to 100 mm are 1440 to 6000 mm² of
    // 9100, 16 to 66 %. Taken to run across they were 40 to 100 %.
    expect(share('place A back slice x12')).toBe('2-9');
  });

  it('says where the new growth alone was lightened', () => {
    const of = (lines: string): string => {
      const { lightened } = placementIn(lines);
      return `${lightened?.onlyNewGrowth} ${lightened?.newGrowth.join(',')}`;
    };
    expect(of('place A roots apply')).toBe('true roots');
    expect(of('place A roots top apply')).toBe('true roots top');
    expect(of('place A top weave x6')).toBe('false ');
    expect(of('place A roots, lengths apply')).toBe('false roots');
  });

  it('counts only bowls that lighten, and their part of a shared line', () => {
    expect(share('place L all apply')).toBe('none');
    expect(share('place A+L top slice x20 turn A L')).toBe(share('place A top slice x10'));
  });

  it('never takes more of an area than there is', () => {
    expect(share('place A top apply\nplace B top apply\nplace B all apply')).toBe('100-100');
    expect(share('place A nape slice x900')).toBe('9-9');
  });

  it('takes `rest` as what no other line names', () => {
    expect(share('place L top, crown apply\nplace A rest apply')).toBe('74-74');
  });

  it('says what it leaves out', () => {
    expect(share('place A band, top apply')).toBe('14-14 without band');
    expect(share('place A top weave')).toBe('0-0 without top');
    expect(share('place A top x6')).toBe('0-0 without top');
    expect(share('place A band apply', 'zone band crown')).toBe('12-12');
  });

  it('grows with the count', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 80 }),
        fc.constantFrom('slice', 'weave', 'babylight', 'panel', 'paint'),
        (count, how) => {
          const of = (sections: number) => placementIn(`place A back ${how} x${sections}`).lightened;
          const [fewer, more] = [of(count), of(count + 1)];
          expect(more?.least).toBeGreaterThanOrEqual(fewer?.least ?? Infinity);
          expect(more?.most).toBeGreaterThanOrEqual(fewer?.most ?? Infinity);
          expect(more?.most).toBeLessThanOrEqual(14);
        },
      ),
      { numRuns: 60 },
    );
  });
});
