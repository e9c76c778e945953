import { describe, expect, it } from 'vitest';
import { isKind, KINDS, kindFacts } from '../../src/trade/kinds.ts';

const O = 'with developer';

describe('kindFacts', () => {
  it.each([
    ['permanent', true, true, true, true, 'all-on', true, false],
    ['demi', true, false, true, true, 'all-on', true, false],
    ['semi', false, false, true, true, 'all-on', false, false],
    ['temporary', false, false, true, true, 'all-on', false, false],
    ['toner', O, false, true, true, 'all-on', true, false],
    ['high-lift', true, true, true, true, 'all-on', true, false],
    ['lightener', true, true, false, false, 'first-on', false, false],
    ['developer', true, false, false, false, 'all-on', false, false],
    ['additive', false, false, false, false, 'all-on', false, true],
    ['remover', false, false, false, false, 'all-on', false, false],
    ['filler', O, false, true, true, 'all-on', true, false],
    ['conditioner', false, false, false, false, 'all-on', false, false],
    ['treatment', false, false, false, false, 'all-on', false, false],
    ['brow', O, false, true, true, 'all-on', true, false],
    ['goods', false, false, false, false, 'all-on', false, false],
  ] as const)('of %s', (kind, oxidative, lightens, colours, shades, timeFrom, skinTest, outsideRatio) => {
    expect(kindFacts(kind)).toStrictEqual({ oxidative, lightens, colours, shades, timeFrom, skinTest, outsideRatio });
  });

  it('has facts for every kind', () => {
    expect(KINDS).toHaveLength(15);
    expect(KINDS.every(isKind)).toBe(true);
    expect(['bleach', '', 'toString'].some(isKind)).toBe(false);
  });

  it('asks for a skin test wherever oxidative dye can be', () => {
    for (const kind of KINDS) {
      const facts = kindFacts(kind);
      expect(facts.skinTest).toBe(facts.colours && facts.oxidative !== false);
    }
  });
});
