import { bowlsPutOn } from '../../reckon/bowl/applied.ts';
import { placeInBowl } from '../../reckon/bowl/contents.ts';
import { isLightening, zonesOfBowl } from '../../reckon/client/state.ts';
import { overlapOn } from '../../reckon/hair/overlap-on.ts';
import { stretchedOnTheDay } from '../../reckon/hair/tried-since.ts';
import { anyMeet } from '../../reckon/head/hair-meets.ts';
import type { VisitReckoned } from '../../reckon/model.ts';
import { daysBetween } from '../../text/dates.ts';
import { LIGHTENER_REST } from '../../trade/intervals.ts';
import { defineRule, type Found, NONE } from '../rule.ts';

const foundIn = (visit: VisitReckoned, earlier: readonly VisitReckoned[]): Found | undefined => {
  for (const bowl of bowlsPutOn(visit).filter(isLightening)) {
    const zones = zonesOfBowl(visit, bowl.name);
    for (let at = earlier.length - 1; at >= 0; at--) {
      const before = earlier[at] as VisitReckoned;
      const days = daysBetween(before.date, visit.date);
      if (days >= LIGHTENER_REST) break;
      if (days <= 0) continue;
      const same = bowlsPutOn(before).find(
        (one) => isLightening(one) && anyMeet(zonesOfBowl(before, one.name), zones, visit.salon.zones),
      );
      if (same === undefined || stretchedOnTheDay(visit)) continue;
      // Over blonde with strong developer is the graver word for the same slip.
      if (overlapOn(visit, earlier, bowl) !== undefined) continue;
      return {
        place: placeInBowl(bowl, ({ item }) => item?.kind === 'lightener' || item?.kind === 'high-lift'),
        message: `Bowl ${bowl.name} lightens where bowl ${same.name} of ${before.date} did, ${days} d before.`,
        expected: `Hair rests about ${LIGHTENER_REST} d before it is lightened again (common practice, a rough guide).`,
        todo: 'Write the stretch test that was made, as in `test stretch springs-back`, the zone, if it was another, or why it was done so soon: `because lightener-again "…"`.',
        label: `after ${days} d`,
        also: [{ place: same.place, says: 'lightened then' }],
      };
    }
  }
  return undefined;
};

export default defineRule({
  name: 'lightener-again',
  family: 'interval',
  severity: 'mind',
  bears: 'that-day',
  over: 'visit',
  looksAt: { kinds: ['lightener', 'high-lift'] },
  what: 'The same hair is lightened again within two weeks, with no stretch test on the day.',
  why: 'What lightening takes from the fibre does not come back, and hair that is not rested breaks sooner.',
  source: { kind: 'common practice' },
  caution: 'lightener',
  check(visit, { earlier }) {
    const found = foundIn(visit, earlier);
    return found === undefined ? NONE : [found];
  },
  bad: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
    client wren-abbott "Wren Abbott"
    visit 2026-08-28 wren-abbott
      bowl A 30 clay + 60 dev-6
      place A top
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-6
             ^^^^^^^
      place A top`,
  good: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
    client wren-abbott "Wren Abbott"
    visit 2026-08-28 wren-abbott
      bowl A 30 clay + 60 dev-6
      place A top
    visit 2026-09-11 wren-abbott
      bowl A 40 clay + 80 dev-6
      place A top`,
});
