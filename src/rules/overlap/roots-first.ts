import { itemsIn } from '../../reckon/bowl/contents.ts';
import { isLightening, lightenedBefore } from '../../reckon/client/state.ts';
import { isAt, mayMeet } from '../../reckon/head/hair-meets.ts';
import type { Run, VisitReckoned } from '../../reckon/model.ts';
import { bowlOf } from '../../reckon/timing/timed-runs.ts';
import { clockText } from '../../text/dates.ts';
import { defineRule, type Found, NONE } from '../rule.ts';

/** `Lightener`, `High-lift`: what a run puts on, as it opens a message. */
const kindOf = (visit: VisitReckoned, run: Run): string => {
  const bowl = bowlOf(visit, run);
  const kind = bowl && itemsIn(bowl).find((item) => item.kind === 'lightener' || item.kind === 'high-lift')?.kind;
  return kind === 'high-lift' ? 'High-lift colour' : 'Lightener';
};

const foundIn = (visit: VisitReckoned, earlier: readonly VisitReckoned[]): Found | undefined => {
  const runs = visit.clock.runs.filter((run) => {
    const bowl = bowlOf(visit, run);
    return bowl !== undefined && isLightening(bowl);
  });
  const { zones } = visit.salon;
  const onFirst = (along: Run): Run | undefined =>
    runs.find(
      (run) =>
        isAt(run.zone, 'roots') &&
        run.allOn <= along.firstOn &&
        run !== along &&
        mayMeet(run.zone.replace('roots', 'all'), along.zone, zones),
    );
  for (const along of runs.filter(({ zone }) => isAt(zone, 'mids', 'lengths') && !isAt(zone, 'roots'))) {
    const roots = onFirst(along);
    if (roots === undefined || lightenedBefore(visit, earlier).some(({ when }) => when !== visit.date)) continue;
    return {
      place: roots.onPlace,
      message: `${kindOf(visit, roots)} goes on ${roots.zone} at ${clockText(roots.firstOn)} and on ${along.zone} at ${clockText(along.firstOn)}.`,
      expected:
        'On hair not lightened before, roots come last: the scalp’s warmth makes them lift faster (common practice).',
      todo: 'Correct the times, if the lengths were first; if not, note for next time: `next … lengths first`.',
      label: 'roots first',
      also: [{ place: along.onPlace, says: `${along.zone} later` }],
    };
  }
  return undefined;
};

export default defineRule({
  name: 'roots-first',
  family: 'overlap',
  severity: 'mind',
  bears: 'that-day',
  over: 'visit',
  looksAt: { kinds: ['lightener', 'high-lift'] },
  what: 'On hair that was not lightened before, lightener goes on the roots before the mids or lengths.',
  why: 'Roots lift faster than lengths, so roots that go on first end up lighter than the rest.',
  source: { kind: 'common practice' },
  check(visit, { earlier }) {
    const found = foundIn(visit, earlier);
    return found === undefined ? NONE : [found];
  },
  bad: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-6
      on 14:00-14:10 A roots
         ^^^^^^^^^^^
      on 14:10-14:20 A lengths
      check 14:25 A orange
      off 14:35 A`,
  good: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-6
      on 14:00-14:10 A lengths
      on 14:10-14:20 A roots
      check 14:25 A orange
      off 14:35 A`,
});
