import type { VisitReckoned } from '../../reckon/model.ts';
import { figure } from '../../reckon/say.ts';
import { isLightening, placingsOf, zonesOfBowl } from '../../reckon/state.ts';
import { compare, exact } from '../../text/exact.ts';
import { WARM_GROWTH } from '../../trade/intervals.ts';
import { bowlsPutOn } from '../applied.ts';
import { placeOf } from '../cite.ts';
import { isAt } from '../hair-meets.ts';
import { liesOnScalp } from '../on-scalp.ts';
import { defineRule, type Found, NONE } from '../rule.ts';

const foundIn = (visit: VisitReckoned): Found | undefined => {
  const { measured } = visit.growth;
  if (measured === undefined || compare(measured, exact(WARM_GROWTH)) <= 0) return undefined;
  const fact = visit.visit.entry.facts.find(({ word }) => word === 'regrowth');
  const lightening = bowlsPutOn(visit).filter(isLightening);
  const zones = lightening.flatMap(({ name }) => zonesOfBowl(visit, name));
  // Mids, a band or lengths noted apart: somebody thought of it.
  if (fact?.word !== 'regrowth' || zones.some((zone) => !isAt(zone, 'roots'))) return undefined;
  const bowl = lightening.find((one) =>
    placingsOf(visit.visit, one.name).some((placing) => liesOnScalp(placing, one) && placing.sections === undefined),
  );
  const runs = visit.clock.runs.filter((run) => run.bowl === bowl?.name);
  if (bowl === undefined || new Set(runs.map(({ firstOn }) => firstOn)).size > 1) return undefined;
  return {
    place: placeOf(visit.visit, fact, fact.length.at),
    message: `${figure(measured)} mm of new growth, and bowl ${bowl.name} goes on all of it at once, on the scalp.`,
    expected: `Beyond about ${WARM_GROWTH} mm the scalp warms only part of it (common practice, a rough guide).`,
    todo: 'Write the mids that were put on first, as in `on 14:00-14:10 A mids`, if that is how it was done; if not, for next time: `next … mids first`.',
    label: 'lifts in two bands',
  };
};

export default defineRule({
  name: 'banding-risk',
  family: 'overlap',
  severity: 'mind',
  bears: 'that-day',
  over: 'visit',
  what: 'Lightener goes on more new growth in one go than the scalp warms: over 25 mm, on the scalp, with nothing on the mids first.',
  why: 'Hair near the scalp is warmer and lifts faster, so long new growth lifts in two bands.',
  source: { kind: 'common practice' },
  check: (visit) => {
    const found = foundIn(visit);
    return found === undefined ? NONE : [found];
  },
  bad: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
      scalp to 6%
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      regrowth 4cm
               ^^^
      bowl A 40 clay + 80 dev-6
      place A roots on-scalp`,
  good: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
      scalp to 6%
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      regrowth 2cm
      bowl A 40 clay + 80 dev-6
      place A roots on-scalp`,
});
