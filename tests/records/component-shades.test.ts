import { describe, expect, it } from 'vitest';
import { lastOf } from '../reckon/reckoned.ts';

const SHELF = `range hulla semi
  mix none
  shades cherry, plum
  measure tbsp 15 g
range grist permanent
  mix 1:1.5
  shades 3, 5
`;

const bowlsOf = (lines: string) => {
  const { bowls } = lastOf(`${SHELF}visit 2026-09-04 wren-abbott\n${lines}\n`);
  return bowls.map(({ portions, problems }) => ({
    parts: portions.map(
      ({ label, shown }) => `${label} ${shown === undefined ? '' : Number(shown.n) / Number(shown.d)}`,
    ),
    problems: problems.map(({ kind }) => kind),
  }));
};

describe('a measure beside a shade that goes by a name', () => {
  it.each(['3 tbsp hulla cherry', 'hulla 3 tbsp cherry', 'hulla cherry 3 tbsp', '3 tbsp cherry hulla'])('%s', (mix) => {
    expect(bowlsOf(`  bowl A ${mix}`)).toEqual([{ parts: ['hulla cherry 45'], problems: [] }]);
  });

  it('is none where a plus is missing', () => {
    const [bowl] = bowlsOf('  bowl A 40 clay hulla cherry');
    expect(bowl?.parts.join()).not.toContain('cherry 40');
  });
});

describe('a measure of several', () => {
  it.each(['2 tbsps hulla plum', '2 tbsp hulla plum', 'hulla plum 2 tbsps'])('%s', (mix) => {
    expect(bowlsOf(`  bowl A ${mix}`)).toEqual([{ parts: ['hulla plum 30'], problems: [] }]);
  });
});

describe('a shade that goes by a number', () => {
  it('is no weight, and the weight is asked for', () => {
    const [bowl] = bowlsOf('  bowl A grist 3 + 20 dev-6');
    expect(bowl?.parts[0]).toBe('grist 3 ');
    expect(bowl?.problems).not.toContain('no-shade');
    expect(bowlsOf('  bowl A grist 30 + 45 dev-6')).toMatchObject([
      { parts: ['grist 30', 'dev-6 45'], problems: ['no-shade'] },
    ]);
  });

  it('is the one the range lists', () => {
    expect(bowlsOf('  bowl A 30 grist 5 + dev-6')).toEqual([{ parts: ['grist 5 30', 'dev-6 45'], problems: [] }]);
  });

  it('is asked about where the range lists none, and is not taken for grams', () => {
    const [bowl] = bowlsOf('  bowl A 30 grist 4 + dev-6');
    expect(bowl?.parts).toEqual(['grist 4 30', 'dev-6 45']);
    expect(bowl?.problems).toEqual(['unknown-shade']);
  });
});
