import { sliceOf } from '../../text/span.ts';
import { lineAt } from '../cite.ts';
import { bowlProblems, clockProblems } from '../problems.ts';
import { defineRule } from '../rule.ts';

export default defineRule({
  name: 'bowl-unmixed',
  family: 'mix',
  severity: 'fix',
  over: 'visit',
  what: 'A line names a bowl that this visit does not mix.',
  why: 'What is said of it belongs to no bowl, or to another one by a slip.',
  source: { kind: 'notation' },
  *check(visit, journal) {
    const named = new Set<string>();
    for (const found of [...bowlProblems(visit, 'no-such-bowl'), ...clockProblems(visit, 'no-such-bowl')]) {
      const bowl = sliceOf(lineAt(journal, found.place), found.place.at).toLowerCase();
      // Several lines about one missing bowl have one cause.
      if (!named.has(bowl)) yield found;
      named.add(bowl);
    }
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
