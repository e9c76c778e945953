import { placeOf } from '../../reckon/cite.ts';
import { factsOf } from '../../reckon/facts-of.ts';
import { figure } from '../../reckon/say.ts';
import { equal, exact, exactOf, sum } from '../../text/exact.ts';
import { joinSpans } from '../../text/span.ts';
import { defineRule, foundEach } from '../rule.ts';

export default defineRule({
  name: 'split-total',
  family: 'money',
  severity: 'fix',
  bears: 'never',
  over: 'visit',
  looksAt: { words: ['split'] },
  what: 'The shares of a `split` line are not 100 per cent together.',
  why: 'Part of the money would be nobody’s, or shared out twice.',
  source: { kind: 'notation' },
  check: ({ visit }) =>
    foundEach(factsOf(visit, 'split'), ({ line, shares }) => {
      const [first] = shares;
      const last = shares.at(-1);
      const whole = sum(shares.map(({ percent }) => exactOf(percent)));
      if (first === undefined || last === undefined || equal(whole, exact(100))) return undefined;
      return {
        place: placeOf(visit, { line }, joinSpans(first.by.at, last.by.at)),
        message: `The shares make ${figure(whole)} % of the visit.`,
        expected: 'Shares make 100 % together.',
        todo: 'Correct one of the shares.',
      };
    }),
  bad: `
    stylist io "Io"
    stylist nia "Nia"
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      split io 60%, nia 50%
            ^^^^^^^^^^^`,
  good: `
    stylist io "Io"
    stylist nia "Nia"
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      split io 50%, nia 50%`,
});
