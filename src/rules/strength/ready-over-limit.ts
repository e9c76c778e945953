import { placeInBowl } from '../../reckon/bowl/contents.ts';
import type { BowlReckoned } from '../../reckon/model.ts';
import { figure, grams } from '../../reckon/say.ts';
import { compare } from '../../text/exact.ts';
import { isLaw, LAW } from '../../trade/law.ts';
import { defineRule, type Found, foundEach } from '../rule.ts';

type Limit = (typeof LAW)['eu']['peroxide'];

const foundIn = (bowl: BowlReckoned, { percent, source }: Limit): Found | undefined => {
  const { name, ready, mixed } = bowl;
  if (ready === undefined || mixed === undefined || compare(ready, percent) <= 0) return undefined;
  // A hair above the limit shows as more than the limit.
  const held = figure(ready, figure(ready) === figure(percent) ? 4 : 2);
  return {
    place: placeInBowl(bowl, ({ role }) => role === 'developer'),
    message: `Bowl ${name} holds ${held} % peroxide ready for use, in ${grams(mixed)}.`,
    expected: `At most ${figure(percent)} % on the hair (${source}).`,
    todo: 'Write the strength that was used; the next bowl takes a weaker developer.',
    label: `${held} % on the head`,
  };
};

export default defineRule({
  name: 'ready-over-limit',
  family: 'strength',
  severity: 'stop',
  bears: 'that-day',
  over: 'visit',
  what: 'The mixture as it goes on the head holds more than 12 per cent of hydrogen peroxide.',
  why: 'Stronger peroxide burns scalp and skin, and the limit binds what is on the head, not the bottle.',
  source: {
    kind: 'published',
    cites: 'Regulation (EC) 1223/2009, Annex III, entry 12, as replaced by Regulation (EU) 2019/831',
  },
  caution: 'peroxide',
  check: ({ bowls, salon: { law } }) => {
    const { peroxide } = LAW[law !== undefined && isLaw(law) ? law : 'eu'];
    return foundEach(bowls, (bowl) => foundIn(bowl, peroxide));
  },
  bad: `
    product dev-18 "Strong developer" developer 18%
    product clay "Peregrine clay" lightener
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 20 clay + 60 dev-18
                       ^^^^^^^^^`,
  good: `
    product dev-18 "Strong developer" developer 18%
    product clay "Peregrine clay" lightener
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 clay + 60 dev-18`,
});
