import type { VisitReckoned } from '../../reckon/model.ts';
import { placeOf } from '../cite.ts';
import { itemsIn } from '../contents.ts';
import { factsOf } from '../facts-of.ts';
import { defineRule, NONE } from '../rule.ts';
import { isOnScalp } from '../time-line.ts';
import { bowlOf } from '../timed-runs.ts';

/** The first run of lightener on the scalp that a visit put heat on. */
const heated = (visit: VisitReckoned): string | undefined => {
  const run = visit.clock.runs.find((one) => {
    const bowl = one.heat > 0 ? bowlOf(visit, one) : undefined;
    return bowl !== undefined && itemsIn(bowl).some(({ kind }) => kind === 'lightener') && isOnScalp(visit, bowl, one);
  });
  return run?.bowl;
};

export default defineRule({
  name: 'heat-on-lightener',
  family: 'time',
  severity: 'fix',
  bears: 'that-day',
  over: 'visit',
  what: 'Heat is put on lightener that lies on the scalp.',
  why: 'Heat makes peroxide work faster than it can be watched, and lightener on the scalp burns skin as well as hair.',
  source: { kind: 'common practice' },
  caution: 'lightener',
  check(visit) {
    const [fact] = factsOf(visit.visit, 'heat');
    const bowl = fact && heated(visit);
    if (fact === undefined || bowl === undefined) return NONE;
    const item = visit.bowls.find(({ name }) => name === bowl)?.portions.find(({ role }) => role === 'base')?.label;
    return [
      {
        place: placeOf(visit.visit, fact, fact.period?.at),
        message: `Heat goes on bowl ${bowl}, ${item}, on the scalp.`,
        expected:
          'Lightener on the scalp takes no heat but the scalp’s own (common practice; its leaflet comes first).',
        todo: 'Write the zones or the bowl that the heat was for, or why: `because heat-on-lightener "…"`.',
        label: 'heat on the scalp',
      },
    ];
  },
  bad: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-6
      place A roots on-scalp
      on 14:00 A roots
      heat 14:05-14:15 A
           ^^^^^^^^^^^
      check 14:15 A orange
      off 14:25 A`,
  good: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-6
      place A roots on-scalp
      on 14:00 A roots
      check 14:15 A orange
      off 14:25 A`,
});
