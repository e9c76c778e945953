import { lineAt } from '../../reckon/cite.ts';
import { sliceOf } from '../../text/span.ts';
import { defineRule } from '../rule.ts';

export default defineRule({
  name: 'bowl-unmixed',
  family: 'mix',
  severity: 'fix',
  bears: 'never',
  over: 'problem',
  kinds: ['no-such-bowl'],
  what: 'A line names a bowl that this visit does not mix.',
  why: 'What is said of it belongs to no bowl, or to another one by a slip.',
  source: { kind: 'notation' },
  found(all, { journal }) {
    const named = new Set<string>();
    return all.filter(({ place }) => {
      const bowl = sliceOf(lineAt(journal, place), place.at).toLowerCase();
      // Several lines about one missing bowl have one cause.
      if (named.has(bowl)) return false;
      named.add(bowl);
      return true;
    });
  },
  bad: `
    range neon "Kelp direct" semi
      mix none
      shades teal
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 neon teal
      left B 5
           ^`,
  good: `
    range neon "Kelp direct" semi
      mix none
      shades teal
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 neon teal
      left A 5`,
});
