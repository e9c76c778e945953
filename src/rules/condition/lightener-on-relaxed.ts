import type { VisitReckoned } from '../../reckon/model.ts';
import { historyKinds, isLightening, testsFor, zonesOfBowl } from '../../reckon/state.ts';
import { firstDayOf } from '../../reckon/when.ts';
import { bowlsPutOn } from '../applied.ts';
import { placeInBowl } from '../contents.ts';
import { anyMeetLoosely } from '../hair-meets.ts';
import { defineRule, type Found } from '../rule.ts';

const foundIn = (visit: VisitReckoned): Found | undefined => {
  const { client, date, salon } = visit;
  for (const { kind, when, zones, place } of historyKinds(client)) {
    const from = when === undefined ? '' : firstDayOf(when);
    if (kind !== 'relaxer' || from > date) continue;
    const bowl = bowlsPutOn(visit).find(
      (one) => isLightening(one) && anyMeetLoosely(zonesOfBowl(visit, one.name), zones, salon.zones),
    );
    if (bowl === undefined) continue;
    const tried = testsFor(client, salon.hours, date).some(
      (test) =>
        (test.kind === 'strand' || test.kind === 'stretch') &&
        test.result !== 'adverse' &&
        test.made !== undefined &&
        test.made.date >= from,
    );
    return {
      place: placeInBowl(bowl, ({ item }) => item?.kind === 'lightener' || item?.kind === 'high-lift'),
      severity: tried ? 'mind' : 'fix',
      message: `Bowl ${bowl.name} lightens hair with a relaxer on file${when === undefined ? '' : ` of ${when}`}${tried ? '' : ', and no strand or stretch test since'}.`,
      expected: 'Relaxed hair is not lightened, or only after a strand has been tried (common practice).',
      todo: 'Write the strand that was tried, as in `test strand clay 20min yellow`, or the zone, if it was another.',
      label: 'relaxed hair',
      also: [{ place, says: 'the relaxer' }],
    };
  }
  return undefined;
};

export default defineRule({
  name: 'lightener-on-relaxed',
  family: 'condition',
  severity: 'fix',
  over: 'visit',
  what: 'Hair that was relaxed is lightened without a strand or stretch test since; `mind` with one.',
  why: 'A relaxer and a lightener break the same bonds, and relaxed hair can come off where lightener touches it.',
  source: { kind: 'common practice' },
  caution: 'lightener',
  *check(visit) {
    const found = foundIn(visit);
    if (found !== undefined) yield found;
  },
  bad: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
    client wren-abbott "Wren Abbott"
      history 2026-03 relaxer lengths
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-6
             ^^^^^^^
      place A top`,
  good: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
    client wren-abbott "Wren Abbott"
      history 2026-03 relaxer lengths
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-6
      place A roots`,
});
