import { expect, it } from 'vitest';
import { cardOf, journalOf } from './compiled.ts';

const SHELF = `product clay "Peregrine clay" lightener
product dev-6 "Cream developer" developer 6%
range cream "Larkfield cream" permanent
range neon "Kelp direct" semi
mix none
shades teal
`;

const block = (client: string, ...visit: string[]): string => {
  const text = `${SHELF}client ada-lowe "Ada Lowe"\n${client}\nvisit 2026-08-02 ada-lowe\n${visit.join('\n')}\n`;
  // Findings bring their own cautions; here it is about those of what was used.
  const [, after = ''] = cardOf(journalOf(text), 'ada-lowe', { on: '2026-08-20' }, []).split('## Caution\n');
  return after.split('\n## ')[0] ?? '';
};

it('has nothing to say where nothing was used that could hurt', () => {
  expect(block('born 2014-01-01', 'bowl A 30 neon teal')).toBe('');
});

it.each([
  ['oxidative colour', '', ['bowl A 30 cream 7/0 + 45 dev-6'], ['severe allergic reactions', 'Hydrogen peroxide']],
  ['lightener', '', ['bowl A 30 clay + 60 dev-6'], ['Lightener can burn', 'Persulphates', 'Hydrogen peroxide']],
  ['metal in the hair', 'history 2025 henna', ['cut'], ['Metal left in the hair']],
  ['a place by the eyes', '', ['bowl A 30 neon teal', 'place A lashes'], ['Products near the eye']],
  ['a reaction noted', '', ['bowl A 30 neon teal', 'reaction +18 A temples itching'], ['After any reaction']],
  ['the label’s age', 'born 2011-01-01', ['bowl A 30 cream 7/0 + 45 dev-6'], ['anyone under 16']],
])('says the usual caution on %s, and who comes first', (_, client, visit, cautions) => {
  const text = block(client, ...visit);
  for (const caution of cautions) expect(text).toContain(caution);
  expect(text).toMatch(/come first\.\s*$/);
});

it('does not speak of the label’s age from the birthday on', () => {
  expect(block('born 2010-08-20', 'bowl A 30 cream 7/0 + 45 dev-6')).not.toContain('under 16');
  expect(block('born 2010-08-21', 'bowl A 30 cream 7/0 + 45 dev-6')).toContain('under 16');
});
