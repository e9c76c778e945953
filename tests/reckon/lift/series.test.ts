import { describe, expect, it } from 'vitest';
import { lighteningOf } from '../../../src/reckon/lift/lightener.ts';
import { reckonAll } from '../../../src/reckon/visit.ts';
import { journalOf } from '../journal-of.ts';
import { liftIn, liftText, SHELF } from './lifted.ts';

const A = 'bowl A 30 clay + 60 dev-6\n';

describe('the lift of a visit', () => {
  it('follows each bowl and place from its own first on', () => {
    expect(
      liftText(
        `${A}on 10:00 A back, top\ncheck 10:10 A back orange, top red\ncheck 10:20 back gold, top orange\noff 10:21 A`,
      ),
    ).toEqual(['A back: 10 5.0, 20 7.0', 'A top: 10 3.0, 20 5.0']);
  });

  it('leaves out bowls that lighten nothing, places nobody looked at, and looks without stage, depth or time', () => {
    expect(liftText('bowl T 20 chalk + 40 water\non 10:00 T\noff 10:10 T')).toEqual([]);
    expect(liftText(`${A}on 10:00 A top\ncheck 10:10 A warm\ncheck A gold\ncheck 10:20 A yellow\noff 10:30 A`)).toEqual(
      ['A top: 20 9.0'],
    );
    expect(liftText('on 10:00 A top\ncheck 10:10 A gold\noff 10:30 A')).toEqual([]);
    expect(liftText('bowl D 40 dev-6\non 10:00 D top\ncheck 10:10 D gold\noff 10:30 D')).toEqual([]);
  });

  it('leaves out a look before the first on, which the clock reports', () => {
    expect(liftText(`${A}on 10:00 A top\ncheck 9:50 A top red\ncheck 10:10 A top gold\noff 10:30 A`)).toEqual([
      'A top: 10 7.0',
    ]);
  });

  it('goes on where no off stands', () => {
    expect(liftText(`${A}on 10:00 A top\ncheck 10:10 A top gold`)).toEqual(['A top: 10 7.0']);
  });

  it('tells a smaller place apart, with the looks at the whole before', () => {
    expect(
      liftText(
        `${A}on 10:00 A back\ncheck 10:10 A orange\ncheck 10:20 A back gold, back left orange\ncheck 10:30 back left gold\noff 10:30 A`,
      ),
    ).toEqual(['A back: 10 5.0, 20 7.0', 'A back left: 10 5.0, 20 5.0, 30 7.0']);
    expect(liftText(`${A}on 10:00 A t-section\ncheck 10:10 A hairline gold, parting orange\noff 10:20 A`)).toEqual([
      'A hairline: 10 7.0',
      'A parting: 10 5.0',
    ]);
  });

  it('tells any place apart where the bowl names none', () => {
    expect(liftText(`${A}on 10:00 A\ncheck 10:10 A orange\ncheck 10:20 A gold, temples orange\noff 10:30 A`)).toEqual([
      'A -: 10 5.0, 20 7.0',
      'A temples: 10 5.0, 20 5.0',
    ]);
  });

  it('takes groups and wider places as the run itself, and a look at both as of both', () => {
    expect(
      liftText(`${A}on 10:00 A back left\ncheck 10:10 A all orange\ncheck 10:20 A back gold\noff 10:30 A`),
    ).toEqual(['A back left: 10 5.0, 20 7.0']);
    expect(liftText(`${A}on 10:00 A back\ncheck 10:10 A back, back left gold\noff 10:30 A`)).toEqual([
      'A back: 10 7.0',
      'A back left: 10 7.0',
    ]);
  });

  it('follows a place of no run once, from the first of the bowl', () => {
    expect(liftText(`${A}on 10:00 A back\non 10:05 A top\ncheck 10:20 A temples gold\noff 10:30 A`)).toEqual([
      'A temples: 20 7.0',
    ]);
  });

  it('says the product, the strength, heat and hedged times', () => {
    const [one] = liftIn(
      journalOf(
        `${SHELF}visit 2026-09-04 wren-abbott\n${A}on ~10:00 A top\nheat 10:05-10:10 A\ncheck 10:10 A gold\noff 10:20 A`,
      ),
    );
    expect(one).toMatchObject({
      client: 'wren-abbott',
      date: '2026-09-04',
      strength: 6,
      heat: 5,
      about: true,
      firstOn: 600,
      off: 620,
      product: { name: 'clay' },
    });
    expect(one?.looks).toMatchObject([{ at: 610, minute: 10, low: 7, high: 7 }]);
  });
});

/** What lightens in the last bowl of a visit: `clay 6`. */
const lightening = (lines: string): string => {
  const [visit] = [
    ...reckonAll(journalOf(`${SHELF}range high "High" high-lift\nvisit 2026-09-04 wren-abbott\n${lines}`)).values(),
  ].flat();
  const bowl = visit?.bowls.at(-1);
  const found = bowl && lighteningOf(bowl);
  return found === undefined ? '-' : `${found.product.name} ${found.strength ?? '?'}`;
};

describe('what lightens in a bowl', () => {
  it('is the heaviest product that can', () => {
    expect(lightening('bowl A 10 clay + 30 chalk + 80 dev-6')).toBe('chalk 6');
    expect(lightening('bowl A clay + 30 chalk + 80 dev-6')).toBe('chalk 6');
    expect(lightening('bowl A 30 high 10/1 + 60 dev-9')).toBe('high 9');
  });

  it('has the strength of its developers together, by weight', () => {
    expect(lightening('bowl A 30 clay + 40 dev-6 + 20 dev-9')).toBe('clay 7');
    expect(lightening('bowl A 30 clay + 7.5% from dev-6 dev-9 1:2')).toBe('clay 7.5');
    expect(lightening('bowl A 30 clay + dev-6')).toBe('clay 6');
  });

  it('has no strength when the bowl does not say one', () => {
    expect(lightening('bowl A 30 clay')).toBe('clay ?');
    expect(lightening('bowl A 30 clay + dev-6 + dev-9')).toBe('clay ?');
    expect(lightening('bowl A 30 clay + 0 dev-6 + 0 dev-9')).toBe('clay ?');
  });

  it('is taken over from the bowl it comes out of, without a strength once developer is added', () => {
    expect(lightening('bowl A 30 clay + 60 dev-6\nbowl B 40 from A')).toBe('clay 6');
    expect(lightening('bowl A 30 clay + 60 dev-6\nbowl B 40 from A + 10 dev-9')).toBe('clay ?');
    expect(lightening('bowl A 60 dev-6\nbowl B 40 from A')).toBe('-');
    expect(lightening('bowl A 60 dev-6')).toBe('-');
    expect(lightening('bowl A 60 chalkk + 60 dev-6')).toBe('-');
  });
});
