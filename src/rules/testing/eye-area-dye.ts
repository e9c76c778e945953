import { bowlsPutOn } from '../../reckon/bowl/applied.ts';
import { basesIn, placeInBowl } from '../../reckon/bowl/contents.ts';
import { isOxidative, zonesOfBowl } from '../../reckon/client/state.ts';
import { isAt } from '../../reckon/head/hair-meets.ts';
import type { BowlReckoned, VisitReckoned } from '../../reckon/model.ts';
import { EYE } from '../../trade/zones.ts';
import { defineRule, type Found, foundEach } from '../rule.ts';

const isBesideEye = (zone: string): boolean => isAt(zone, ...EYE);

const foundIn = (visit: VisitReckoned, bowl: BowlReckoned): Found | undefined => {
  const zone = zonesOfBowl(visit, bowl.name).find(isBesideEye);
  if (zone === undefined) return undefined;
  const item = basesIn(bowl).find(({ kind }) => kind !== undefined && kind !== 'brow');
  if (item === undefined || !isOxidative(bowl)) return undefined;
  return {
    place: placeInBowl(bowl, (portion) => portion.item === item),
    message: `Bowl ${bowl.name} holds ${item.name}, ${item.kind}, and goes on ${zone}.`,
    expected: 'Beside the eye only what its own label gives for that is used (Regulation (EC) 1223/2009, Annex III).',
    todo: 'Write the brow tint that was used, or the zone that was meant.',
    label: `on ${zone}`,
  };
};

export default defineRule({
  name: 'eye-area-dye',
  family: 'testing',
  severity: 'stop',
  bears: 'that-day',
  over: 'visit',
  what: 'Oxidative colour or lightener that is not of the kind `brow` goes on brows or lashes.',
  why: 'Colour for the head is not made for use beside the eye, and its label says to keep it out of the eyes.',
  source: {
    kind: 'published',
    cites: 'Regulation (EC) 1223/2009, Annex III: dyes on lashes have entries of their own, such as 8b',
  },
  caution: 'eyes',
  check: (visit) => foundEach(bowlsPutOn(visit), (bowl) => foundIn(visit, bowl)),
  bad: `
    product dev-3 "Cream developer" developer 3%
    product clay "Peregrine clay" lightener
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 4 clay + 8 dev-3
             ^^^^^^
      place A brow`,
  good: `
    product dev-3 "Cream developer" developer 3%
    product clay "Peregrine clay" lightener
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 4 clay + 8 dev-3
      place A hairline`,
});
