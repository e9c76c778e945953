import { placeInBowl } from '../../reckon/bowl/contents.ts';
import type { BowlReckoned } from '../../reckon/model.ts';
import { grams } from '../../reckon/say.ts';
import { add, compare, div, exact, isZero, max, ZERO } from '../../text/exact.ts';
import { defineRule, foundEach } from '../rule.ts';

/** Whether a bowl is a further mix of another, with which it is held together. */
const isFurtherMix = ({ name }: BowlReckoned, bowls: readonly BowlReckoned[]): boolean =>
  bowls.some(({ name: of, mixedWithMore }) => mixedWithMore !== undefined && of !== name && name.startsWith(of));

export default defineRule({
  name: 'more-left-than-mixed',
  family: 'mix',
  severity: 'stop',
  bears: 'never',
  over: 'visit',
  what: 'More is left in a bowl, or taken out of it, than was mixed.',
  why: 'One of the weights is impossible, and the next mix would be made from it.',
  source: { kind: 'notation' },
  check: ({ bowls, salon }) =>
    foundEach(bowls, (bowl) => {
      const { name, mixed, mixedWithMore, left, taken, place } = bowl;
      // What is left of a bowl mixed a second time is left of both mixes.
      const all = mixedWithMore ?? mixed;
      if (all === undefined) return undefined;
      const gone = add(left?.weight ?? ZERO, taken);
      // The scales show whole steps: what they show of the whole and of the rest may each be half a step out.
      const room = max(div(salon.scale, exact(2)), bowl.about ? div(all, exact(10)) : ZERO);
      // Asked last: it looks through all bowls, and seldom matters.
      if (compare(gone, add(all, room)) <= 0 || isFurtherMix(bowl, bowls)) return undefined;
      const out = isZero(taken) ? [] : [`${grams(taken)} ${left === undefined ? 'are ' : ''}taken out`];
      const rest = left === undefined ? [] : [`${grams(left.weight)} are left`];
      const source =
        left === undefined ? bowls.find(({ portions }) => portions.some(({ from }) => from?.name === name)) : undefined;
      return {
        place: left?.place ?? (source && placeInBowl(source, ({ from }) => from?.name === name)) ?? place,
        message: `Bowl ${name} was ${grams(all)}, and ${[...rest, ...out].join(' and ')}.`,
        todo: `Write what the scales said, of the bowl or of what is ${left === undefined ? 'taken' : 'left'}; of a second mix, \`more ${name}\`.`,
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
