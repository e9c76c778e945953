import { lineAt } from '../../reckon/cite.ts';
import { fromOf, spanOf, toOf } from '../../text/span.ts';
import { defineRule } from '../rule.ts';

export default defineRule({
  name: 'amount-unweighable',
  family: 'mix',
  severity: 'fix',
  bears: 'never',
  over: 'problem',
  kinds: ['no-density', 'unknown-measure'],
  what: 'A volume or a measure cannot be turned into grams.',
  why: 'Without grams neither the ratio nor the strength on the head can be reckoned.',
  source: { kind: 'notation' },
  found: (all, { journal }) =>
    all.map((found) => {
      const { at } = found.place;
      const from = fromOf(at);
      // The figure alone is marked where its unit is a word of the shelf.
      const rest = lineAt(journal, found.place).slice(from);
      const figure = rest.length - rest.replace(/^[^\p{L}\s]*\s*\p{L}*/u, '').length;
      return { ...found, place: { ...found.place, at: spanOf(from, Math.max(toOf(at), from + figure)) } };
    }),
  bad: `
    product dev-6 "Cream developer" developer 6%
      density 1.01
    product clay "Peregrine clay" lightener
      mix 1:1.5-1:2
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 2 scoops clay + dev-6 1:2
             ^^^^^^^^`,
  good: `
    product dev-6 "Cream developer" developer 6%
      density 1.01
    product clay "Peregrine clay" lightener
      mix 1:1.5-1:2
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 20 clay + dev-6 1:2`,
});
