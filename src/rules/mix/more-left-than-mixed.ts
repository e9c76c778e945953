import { grams } from '../../reckon/say.ts';
import { add, compare } from '../../text/exact.ts';
import { defineRule, foundEach } from '../rule.ts';

export default defineRule({
  name: 'more-left-than-mixed',
  family: 'mix',
  severity: 'stop',
  over: 'visit',
  what: 'More is left in a bowl, or taken out of it, than was mixed.',
  why: 'One of the weights is impossible, and the next mix would be made from it.',
  source: { kind: 'notation' },
  check: ({ bowls, salon }) =>
    foundEach(bowls, ({ name, mixed, mixedWithMore, left, taken, place }) => {
      // What is left of a bowl mixed a second time is left of both mixes.
      const all = mixedWithMore ?? mixed;
      if (all === undefined || left === undefined) return undefined;
      const gone = add(left.weight, taken);
      if (compare(gone, all) <= 0 || compare(gone, add(all, salon.scale)) <= 0) return undefined;
      const out = taken.n === 0 ? '' : ` and ${grams(taken)} taken out`;
      return {
        place: left.place,
        message: `Bowl ${name} was ${grams(all)}, and ${grams(left.weight)} are left${out}.`,
        todo: 'Write what the scales said, of the bowl or of what is left.',
        label: `at most ${grams(all)}`,
        also: [{ place, says: 'mixed here' }],
      };
    }),
  bad: `
    range neon "Kelp direct" semi
      mix none
      shades teal
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 neon teal
      left A 45 binned
           ^^^^`,
  good: `
    range neon "Kelp direct" semi
      mix none
      shades teal
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 neon teal
      left A 5 binned`,
});
