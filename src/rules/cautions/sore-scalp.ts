import { bowlsPutOn } from '../../reckon/bowl/applied.ts';
import { cautionIn } from '../../reckon/bowl/caution-in.ts';
import { placeInBowl } from '../../reckon/bowl/contents.ts';
import { cautionsOn, isOxidative, placingsOf, zonesOfBowl } from '../../reckon/client/state.ts';
import { isAt } from '../../reckon/head/hair-meets.ts';
import type { BowlReckoned, VisitReckoned } from '../../reckon/model.ts';
import { onFile } from '../../reckon/on-file.ts';
import type { Place } from '../../text/span.ts';
import { sameLine } from '../../text/span.ts';
import { skinFlag } from '../../trade/contraindications.ts';
import { defineRule } from '../rule.ts';

/** Whether a bowl comes to the scalp: by its `place` lines, else by a zone that goes down to it. */
const touchesScalp = (visit: VisitReckoned, bowl: BowlReckoned): boolean => {
  const placings = placingsOf(visit.visit, bowl.name);
  if (placings.some(({ scalp }) => scalp === 'on')) return true;
  if (placings.some(({ scalp }) => scalp === 'off')) return false;
  const zones = zonesOfBowl(visit, bowl.name);
  return zones.length === 0 || zones.some((zone) => isAt(zone, 'roots', 'all', 'full-head'));
};

export default defineRule({
  name: 'sore-scalp',
  family: 'cautions',
  severity: 'stop',
  bears: 'that-day',
  over: 'client',
  what: 'Oxidative colour or lightener comes to the scalp while a caution of a rash or a damaged scalp is in force; `mind`, once, for a sensitive one.',
  why: 'Broken or inflamed skin lets dye and peroxide in, burns sooner and is sensitised more easily.',
  source: {
    kind: 'published',
    cites: 'Regulation (EC) 1223/2009, Annex III, label warnings of the oxidative hair dyes',
  },
  caution: 'scalp',
  *check(client, visits) {
    if (onFile(client).caution.length === 0) return;
    const minded: Place[] = [];
    for (const visit of visits) {
      for (const { text, place } of cautionsOn(visit.date, visit.client)) {
        const flag = skinFlag(text);
        // A sensitive scalp is told of once; it is on every card besides.
        if (flag === undefined || minded.some((one) => sameLine(one, place))) continue;
        const bowl = bowlsPutOn(visit).find((one) => isOxidative(one) && touchesScalp(visit, one));
        if (bowl === undefined) continue;
        if (flag === 'sensitive scalp') minded.push(place);
        yield {
          place: placeInBowl(bowl, ({ role }) => role === 'base'),
          severity: flag === 'sensitive scalp' ? 'mind' : 'stop',
          message: `Bowl ${bowl.name} comes to the scalp, and the caution "${text}" is in force.`,
          expected: `Labels of oxidative dyes name a ${flag} as a reason not to colour (Regulation (EC) 1223/2009, Annex III).`,
          todo: 'Write `off-scalp 1cm` if that is how it was placed, or end the caution with `until` and a date; if it went on, why: `because sore-scalp "…"`.',
          label: flag,
          caution: cautionIn(bowl, 'scalp', 'lightener', 'peroxide'),
          also: [{ place, says: 'the caution' }],
        };
        break;
      }
    }
  },
  bad: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
      scalp to 6%
    client wren-abbott "Wren Abbott"
      caution irritated scalp, cream from her doctor until 2026-10
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-6
             ^^^^^^^
      place A roots on-scalp`,
  good: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
      scalp to 6%
    client wren-abbott "Wren Abbott"
      caution irritated scalp, cream from her doctor until 2026-09
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-6
      place A roots on-scalp`,
});
