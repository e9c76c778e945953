import { bowlsPutOn } from '../../reckon/bowl/applied.ts';
import { cautionIn } from '../../reckon/bowl/caution-in.ts';
import { itemsIn, placeInBowl } from '../../reckon/bowl/contents.ts';
import { breaksHold, type HoldInForce, holdsOfVisit, isLightening } from '../../reckon/client/state.ts';
import type { BowlReckoned } from '../../reckon/model.ts';
import { onFile } from '../../reckon/on-file.ts';
import { lineName, sentence } from '../../text/sentence.ts';
import { defineRule, type Found, foundEach, NONE } from '../rule.ts';

const found = (hold: HoldInForce, bowl: BowlReckoned): Found => {
  const { what, until, untilLetter, says, place } = hold;
  const items = itemsIn(bowl).filter(({ kind }) => kind !== 'developer');
  const named = itemsIn(bowl).find(({ name, kind }) => name === what || kind === what);
  const holds = named?.name ?? items.map(({ name }) => name).join(' and ');
  const end = until !== undefined ? `to ${until}` : untilLetter ? 'until a letter' : 'for good';
  const why = says === undefined ? '' : `, "${says}"`;
  return {
    place: placeInBowl(bowl, ({ item }) => named === undefined || item === named),
    message: `Bowl ${bowl.name} holds ${holds}, and \`${what}\` is held ${end}.`,
    expected: sentence`The hold stands at ${lineName(place)}${why}.`,
    todo: 'Write what was really used, or why the hold was lifted: `because broken-hold "…"`.',
    label: `held ${end}`,
    also: [{ place, says: 'the hold' }],
    caution: isLightening(bowl) ? 'lightener' : cautionIn(bowl, 'reaction', 'lightener', 'peroxide'),
  };
};

export default defineRule({
  name: 'broken-hold',
  family: 'cautions',
  severity: 'stop',
  bears: 'that-day',
  over: 'visit',
  what: 'Something is used that a `hold` line in force keeps off this client.',
  why: 'A hold is the warning left for the next hand; it was set because hair or skin had been at risk.',
  source: { kind: 'notation' },
  caution: 'reaction',
  check(visit) {
    const bowls = bowlsPutOn(visit);
    if (bowls.length === 0 || onFile(visit.client).hold.length === 0) return NONE;
    return foundEach(holdsOfVisit(visit), (hold) => {
      const bowl = bowls.find((one) => breaksHold(hold, one));
      return bowl && found(hold, bowl);
    });
  },
  bad: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
    client wren-abbott "Wren Abbott"
      hold lightener to 2026-10-01 "ends gummy"
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-6
             ^^^^^^^`,
  good: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
    client wren-abbott "Wren Abbott"
      hold lightener to 2026-09-01 "ends gummy"
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-6`,
});
