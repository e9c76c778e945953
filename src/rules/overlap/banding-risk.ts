import { bowlsPutOn } from '../../reckon/bowl/applied.ts';
import { placeOf } from '../../reckon/cite.ts';
import { isLightening, placingsOf, zonesOfBowl } from '../../reckon/client/state.ts';
import { isAt } from '../../reckon/head/hair-meets.ts';
import { liesOnScalp } from '../../reckon/head/on-scalp.ts';
import type { BowlReckoned, FactsOf, VisitReckoned } from '../../reckon/model.ts';
import { figure } from '../../reckon/say.ts';
import { compare, type Exact, exact } from '../../text/exact.ts';
import { WARM_GROWTH } from '../../trade/intervals.ts';
import { defineRule, type Found, NONE } from '../rule.ts';

type Regrowth = FactsOf<'regrowth'>;

type Grown = { readonly mm: Exact; readonly measured: Regrowth | undefined };

/** The new growth as measured; of a visit of the day or ahead that nothing went on at yet, what is expected by then. */
const grownOn = ({ growth, date, clock, visit }: VisitReckoned, on: string | undefined): Grown | undefined => {
  const measured = visit.entry.facts.find((fact): fact is Regrowth => fact.word === 'regrowth');
  if (growth.measured !== undefined) return measured && { mm: growth.measured, measured };
  const isAhead = on !== undefined && date >= on && clock.runs.length === 0;
  return isAhead && growth.expected !== undefined ? { mm: growth.expected, measured: undefined } : undefined;
};

const foundIn = (visit: VisitReckoned, on: string | undefined): Found | undefined => {
  const grown = grownOn(visit, on);
  if (grown === undefined || compare(grown.mm, exact(WARM_GROWTH)) <= 0) return undefined;
  const { mm, measured } = grown;
  const lightening = bowlsPutOn(visit).filter(isLightening);
  const zones = lightening.flatMap(({ name }) => zonesOfBowl(visit, name));
  // Mids, a band or lengths noted apart: somebody thought of it.
  if (zones.some((zone) => !isAt(zone, 'roots'))) return undefined;
  const isOnScalp = (bowl: BowlReckoned): boolean =>
    placingsOf(visit.visit, bowl.name).some((one) => liesOnScalp(one, bowl) && one.sections === undefined);
  const bowl = lightening.find(isOnScalp);
  const runs = visit.clock.runs.filter((run) => run.bowl === bowl?.name);
  if (bowl === undefined || new Set(runs.map(({ firstOn }) => firstOn)).size > 1) return undefined;
  const goes = `bowl ${bowl.name} goes on all of it at once, on the scalp.`;
  const expected = `Beyond about ${WARM_GROWTH} mm the scalp warms only part of it (common practice, a rough guide).`;
  const label = 'lifts in two bands';
  if (measured === undefined)
    return {
      place: bowl.place,
      message: `About ${figure(mm, 0)} mm of new growth is expected, and ${goes}`,
      expected,
      todo: 'Measure it, as in `regrowth 2cm`, and where it is as long place mids apart, to go on first: `place A mids`.',
      label,
    };
  return {
    place: placeOf(visit.visit, measured, measured.length.at),
    message: `${figure(mm)} mm of new growth, and ${goes}`,
    expected,
    todo: 'Write the mids that were put on first, as in `on 14:00-14:10 A mids`, if that is how it was done; if not, for next time: `next … mids first`.',
    label,
  };
};

export default defineRule({
  name: 'banding-risk',
  family: 'overlap',
  severity: 'mind',
  bears: 'that-day',
  over: 'visit',
  what: 'Lightener goes on more new growth in one go than the scalp warms: over 25 mm, measured or before the visit expected, on the scalp, with nothing on the mids first.',
  why: 'Hair near the scalp is warmer and lifts faster, so long new growth lifts in two bands.',
  source: { kind: 'common practice' },
  check: (visit, { on }) => {
    const found = foundIn(visit, on);
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
