import { describe, expect, it } from 'vitest';
import {
  isColour,
  isLightening,
  isOxidative,
  productsToTest,
  putsOnColour,
  reachesRoots,
  touchesRoots,
  zonesOfBowl,
} from '../../src/reckon/head/services.ts';
import { lastOf } from './reckoned.ts';

const visitWith = (lines: string) => lastOf(`visit 2026-09-04 wren-abbott\n${lines}`);

const firstBowl = (lines: string) => {
  const [bowl] = visitWith(lines).bowls;
  if (bowl === undefined) throw new Error('no bowl');
  return bowl;
};

const BOWLS = {
  lightener: 'bowl A 30 clay + 60 dev-6',
  permanent: 'bowl A 30 cream 7/0 + 45 dev-6',
  toner: 'bowl A 20 toner 9/1 + 20 gloss-act',
  direct: 'bowl A 30 neon teal',
  filler: 'bowl A 30 fill gold',
  mask: 'bowl A 30 conditioner',
  unknown: 'bowl A 30 caly + 60 dev-6',
  developer: 'bowl A 60 dev-6',
};

const which = (does: (bowl: ReturnType<typeof firstBowl>) => boolean): string[] =>
  Object.entries(BOWLS)
    .filter(([, lines]) => does(firstBowl(lines)))
    .map(([name]) => name);

describe('what a bowl does', () => {
  it('colours or lightens', () => {
    expect(which(isColour)).toEqual(['lightener', 'permanent', 'toner', 'direct', 'filler']);
  });

  it('works by oxidation', () => {
    expect(which(isOxidative)).toEqual(['lightener', 'permanent', 'toner']);
    expect(isOxidative(firstBowl('bowl A 30 fill gold + 30 dev-3'))).toBe(true);
    expect(isOxidative(firstBowl('bowl A 30 toner 9/1'))).toBe(false);
  });

  it('is there to lighten', () => {
    expect(which(isLightening)).toEqual(['lightener']);
  });

  it('is what its bowls are', () => {
    const [, second] = visitWith(`${BOWLS.lightener}\nbowl B 40 from A + 5 conditioner`).bowls;
    expect(second && [isColour(second), isOxidative(second), isLightening(second)]).toEqual([true, true, true]);
  });
});

describe('productsToTest', () => {
  const names = (lines: string): string[] => productsToTest(visitWith(lines));

  it('names what holds oxidative dye as mixed, once', () => {
    expect(
      names('bowl A 30 cream 7/0 + 45 dev-6\nbowl B 20 toner 9/1 + 20 gloss-act\nbowl C 30 cream 7/1 + 45 dev-6'),
    ).toEqual(['cream', 'toner']);
    expect(names('bowl A 30 clay + 60 dev-6\nbowl B 30 neon teal\nbowl C 30 caly')).toEqual([]);
    expect(names('bowl A 30 fill gold')).toEqual([]);
    expect(names('bowl A 30 fill gold + 30 dev-3')).toEqual(['fill']);
  });

  it('looks into the bowl that another is taken out of', () => {
    expect(names('bowl A 30 cream 7/0 + 45 dev-6\nbowl B 40 from A + 5 conditioner\nplace A off-head')).toEqual([
      'cream',
    ]);
  });

  it('leaves out what goes on hair off the head alone', () => {
    const bowl = 'bowl A 30 cream 7/0 + 45 dev-6';
    expect(names(`${bowl}\nplace A off-head`)).toEqual([]);
    expect(names(`${bowl}\nplace A off-head lengths`)).toEqual([]);
    expect(names(`${bowl}\nplace A off-head, nape`)).toEqual(['cream']);
    expect(names(bowl)).toEqual(['cream']);
  });
});

describe('where a bowl goes', () => {
  it('is what its `place` and `on` lines say', () => {
    const visit = visitWith(
      'bowl A 30 clay + 60 dev-6\nbowl T 20 toner 9/1 + 20 gloss-act\nplace A top weave x6\non 10:00 A top, hairline\noff 10:30 A\non 10:40 T\noff 10:50 T',
    );
    expect(zonesOfBowl(visit, 'A')).toEqual(['top', 'hairline']);
    expect(zonesOfBowl(visit, 'T')).toEqual([]);
  });
});

describe('putsOnColour and reachesRoots', () => {
  const roots = (lines: string): boolean => reachesRoots(visitWith(lines));
  const touches = (lines: string): boolean => touchesRoots(visitWith(lines));
  const { permanent, lightener, toner, direct } = BOWLS;

  it('counts any colour', () => {
    expect(putsOnColour(visitWith(direct))).toBe(true);
    expect(putsOnColour(visitWith(BOWLS.mask))).toBe(false);
  });

  it('counts oxidative colour at the roots, on the scalp or all over', () => {
    expect(roots(permanent)).toBe(true);
    expect(roots(`${permanent}\non 10:00 A roots\noff 10:45 A`)).toBe(true);
    expect(roots(`${permanent}\non 10:00 A all\noff 10:45 A`)).toBe(true);
    expect(roots(`${permanent}\nplace A top, crown, sides block on-scalp`)).toBe(true);
    expect(roots(`${permanent}\non 10:00 A lengths\noff 10:45 A`)).toBe(false);
    expect(roots(`${permanent}\non 10:00 A top\noff 10:45 A`)).toBe(false);
  });

  it('does not count a T-section, a parting or pieces at the front, where most of the head kept its roots', () => {
    expect(roots(`${lightener}\nplace A t-section weave x8 off-scalp 1cm foil`)).toBe(false);
    expect(roots(`${lightener}\nplace A roots t-section weave x8`)).toBe(false);
    expect(roots(`${permanent}\non 10:00 A roots front\noff 10:45 A`)).toBe(false);
    expect(roots(`${permanent}\nplace A hairline, parting apply on-scalp`)).toBe(false);
    // Crown, sides and back are 12, 17 and 14 %: 43. Without the back they are 29.
    expect(roots(`${lightener}\nplace A crown, sides, back weave x20`)).toBe(true);
    expect(roots(`${lightener}\nplace A crown, sides weave x20`)).toBe(false);
    expect(roots(`${lightener}\nplace A crown, sides left, back weave x20`)).toBe(false);
    // All bowls of a visit together.
    expect(
      roots(`${lightener}\nbowl B 30 clay + 60 dev-6\nplace A t-section, sides weave x8\nplace B crown, back weave x8`),
    ).toBe(true);
  });

  it('does not count a gloss, all over or melted in, but one that is put on the new growth alone', () => {
    const gloss = 'range sheen demi\nvisit 2026-09-04 wren-abbott\nbowl A 30 sheen 6/0 + 60 gloss-act';
    expect(roots(gloss)).toBe(false);
    expect(roots(`${gloss}\non 10:00 A all\noff 10:20 A`)).toBe(false);
    expect(roots(`${gloss}\nplace A roots, lengths apply`)).toBe(false);
    expect(roots(`${gloss}\nplace A roots melt`)).toBe(false);
    expect(roots(`${gloss}\nplace A roots apply`)).toBe(true);
  });

  it('counts a lightener wherever it goes down to the roots', () => {
    expect(roots(`${lightener}\nplace A full-head weave x60 off-scalp 1cm foil`)).toBe(true);
    expect(roots(`${lightener}\nplace A band panel x6`)).toBe(false);
    expect(roots(`${lightener}\nplace A ends top paint`)).toBe(false);
    expect(roots(`${lightener}\nplace A roots top, crown, back block`)).toBe(true);
    expect(touches(`${lightener}\nplace A roots top block`)).toBe(true);
    expect(touches(`${lightener}\nplace A ends top paint`)).toBe(false);
  });

  it('does not count toner, direct dye or what does not colour', () => {
    expect(roots(`${toner}\non 10:00 A roots\noff 10:10 A`)).toBe(false);
    expect(roots(`${direct}\non 10:00 A roots\noff 10:20 A`)).toBe(false);
    expect(roots(BOWLS.mask)).toBe(false);
    expect(roots('bowl A 20 toner 9/1 + 20 cream 9/1 + 40 dev-3')).toBe(true);
    expect(roots('bowl A 20 toner 9/1 + 2 bond + 20 dev-3')).toBe(false);
  });
});
