import { bowlsPutOn } from '../../reckon/bowl/applied.ts';
import { itemsIn, placeInBowl } from '../../reckon/bowl/contents.ts';
import { historyKinds, isLightening, zonesOfBowl } from '../../reckon/client/state.ts';
import { stretchedSince } from '../../reckon/hair/tried-since.ts';
import { anyMeetLoosely } from '../../reckon/head/hair-meets.ts';
import type { VisitReckoned } from '../../reckon/model.ts';
import { firstDayOf } from '../../reckon/when.ts';
import { daysBetween } from '../../text/dates.ts';
import { historyFacts, isHistory } from '../../trade/hair.ts';
import { RESHAPE_REST } from '../../trade/intervals.ts';
import type { Kind } from '../../trade/kinds.ts';
import { defineRule, type Found, NONE } from '../rule.ts';

const STRONG: readonly Kind[] = ['permanent', 'high-lift', 'lightener'];

/** Most days that can lie between a day or a month as typed and a date; undefined once it is later. */
const mostDays = (when: string, date: string): number | undefined => {
  const first = firstDayOf(when);
  return first > date ? undefined : daysBetween(first, date);
};

const foundIn = (visit: VisitReckoned): Found | undefined => {
  for (const { kind, when, zones, place } of historyKinds(visit.client)) {
    if (when === undefined || !isHistory(kind) || !historyFacts(kind).restructured) continue;
    const days = mostDays(when, visit.date);
    if (days === undefined || days >= RESHAPE_REST) continue;
    const bowl = bowlsPutOn(visit).find(
      (one) =>
        itemsIn(one).some(({ kind: own }) => own !== undefined && STRONG.includes(own)) &&
        // A relaxer under lightener has a rule of its own.
        !(kind === 'relaxer' && isLightening(one)) &&
        anyMeetLoosely(zonesOfBowl(visit, one.name), zones, visit.salon.zones),
    );
    if (bowl === undefined || stretchedSince(visit, when)) continue;
    return {
      place: placeInBowl(bowl, ({ role }) => role === 'base'),
      message: `Bowl ${bowl.name} goes on hair that had a ${kind} ${days} d before.`,
      expected: `Permanent colour and lightener wait about ${RESHAPE_REST} d after a ${kind} (common practice, a rough guide).`,
      todo: 'Write the stretch test that was made, as in `test stretch springs-back`, or why it went on: `because reshaped-lately "…"`.',
      label: `after a ${kind}`,
      also: [{ place, says: `the ${kind}` }],
    };
  }
  return undefined;
};

export default defineRule({
  name: 'reshaped-lately',
  family: 'interval',
  severity: 'mind',
  bears: 'that-day',
  over: 'visit',
  looksAt: { kinds: STRONG },
  what: 'Permanent colour or lightener is used within two weeks of a perm, relaxer or smoothing, with no stretch test since.',
  why: 'Both services break bonds of the same fibre, and fresh waves or straightness can slacken under peroxide.',
  source: { kind: 'common practice' },
  check: (visit) => {
    const found = foundIn(visit);
    return found === undefined ? NONE : [found];
  },
  bad: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
    client wren-abbott "Wren Abbott"
      history 2026-08-28 perm
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-6
             ^^^^^^^`,
  good: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
    client wren-abbott "Wren Abbott"
      history 2026-08-20 perm
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-6`,
});
