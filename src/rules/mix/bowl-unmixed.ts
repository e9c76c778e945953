import { lineAt } from '../../reckon/cite.ts';
import { sliceOf } from '../../text/span.ts';
import { bowlProblems, clockProblems } from '../problems.ts';
import { defineRule, foundEach, NONE } from '../rule.ts';

export default defineRule({
  name: 'bowl-unmixed',
  family: 'mix',
  severity: 'fix',
  bears: 'never',
  over: 'visit',
  what: 'A line names a bowl that this visit does not mix.',
  why: 'What is said of it belongs to no bowl, or to another one by a slip.',
  source: { kind: 'notation' },
  check(visit, journal) {
    const inBowls = bowlProblems(visit, 'no-such-bowl');
    const onClock = clockProblems(visit, 'no-such-bowl');
    if (inBowls.length === 0 && onClock.length === 0) return NONE;
    const named = new Set<string>();
    return foundEach([...inBowls, ...onClock], (found) => {
      const bowl = sliceOf(lineAt(journal, found.place), found.place.at).toLowerCase();
      // Several lines about one missing bowl have one cause.
      if (named.has(bowl)) return undefined;
      named.add(bowl);
      return found;
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
