import { bowlsPutOn } from '../../reckon/bowl/applied.ts';
import { itemsIn } from '../../reckon/bowl/contents.ts';
import { placeOf } from '../../reckon/cite.ts';
import { isLightening, lightenedBefore, zonesOfBowl } from '../../reckon/client/state.ts';
import type { BowlReckoned, VisitReckoned } from '../../reckon/model.ts';
import { figure } from '../../reckon/say.ts';
import { daysBetween } from '../../text/dates.ts';
import { compare, exact, roundTo, sub } from '../../text/exact.ts';
import { growthLimit, PLAUSIBLE_GROWTH, regrowth } from '../../trade/growth.ts';
import { defineRule, type Found, NONE } from '../rule.ts';

/** Millimetres over the limit before it is worth a word: what a comb and an eye may be out. A choice. */
const ROOM = exact(5);

/** Kinds that leave a line to measure from; what washes out leaves the older one. */
const DRAWS: ReadonlySet<string | undefined> = new Set(['permanent', 'high-lift', 'lightener']);

const WHOLE: ReadonlySet<string> = new Set(['roots', 'all', 'full-head']);

/** Whether a bowl went on all of the roots. */
const isOnAllRoots = (visit: VisitReckoned, bowl: BowlReckoned): boolean => {
  const zones = zonesOfBowl(visit, bowl.name);
  return zones.length === 0 || zones.some((zone) => zone.split(' ').every((word) => WHOLE.has(word)));
};

const UNFINISHED: ReadonlySet<string> = new Set(['leave', 'stopped', 'reaction', 'declined']);

/** The bowl of a visit that did all of the roots; undefined too where any of them were left out. */
const rootsOf = (visit: VisitReckoned): BowlReckoned | undefined =>
  visit.visit.entry.facts.some(({ word }) => UNFINISHED.has(word))
    ? undefined
    : bowlsPutOn(visit).find((bowl) => itemsIn(bowl).some(({ kind }) => DRAWS.has(kind)) && isOnAllRoots(visit, bowl));

const foundOf = (visit: VisitReckoned, earlier: readonly VisitReckoned[]): Found | undefined => {
  const { measured } = visit.growth;
  const fact = measured && visit.visit.entry.facts.find(({ word }) => word === 'regrowth');
  if (measured === undefined || fact?.word !== 'regrowth' || fact.length.about) return undefined;
  if (fact.zones.some(({ zone }) => !WHOLE.has(zone))) return undefined;
  const before = earlier.filter(({ date }) => date < visit.date);
  const days = visit.daysSinceRoots;
  // Roots done in part, or with what leaves no line, are measured from the time before.
  const roots = before.findLast(({ date }) => days !== undefined && daysBetween(date, visit.date) === days);
  const bowl = roots && rootsOf(roots);
  if (roots === undefined || bowl === undefined || days === undefined) return undefined;
  // Foils grow out below roots that are tinted, and the new growth may be that of the foils.
  if (!isLightening(bowl) && lightenedBefore(visit, before).length > 0) return undefined;
  // A rate of her own is never faster: what is measured beyond it teaches none.
  const rate = PLAUSIBLE_GROWTH.high;
  const most = growthLimit(days, rate);
  if (compare(sub(measured, most), ROOM) < 0) return undefined;
  const grown = figure(roundTo(regrowth(days, rate), exact(1)));
  return {
    place: placeOf(visit.visit, fact, fact.length.at),
    message: `${figure(measured)} mm of new growth, ${days} d after the roots were done on ${roots.date}.`,
    expected: `${days} d grow about ${grown} mm at the fastest rate measured, ${figure(rate, 3)} mm a day (International Journal of Dermatology 44, 2005, pages 6-9).`,
    todo: 'Write the length as it was measured, as in `regrowth 10mm`, or the visit that is missing or has another date.',
    label: `${days} d grow about ${grown} mm`,
    also: [{ place: bowl.place, says: 'did the roots' }],
  };
};

export default defineRule({
  name: 'regrowth-unlikely',
  family: 'interval',
  severity: 'fix',
  bears: 'that-day',
  over: 'visit',
  what: 'More than twice the new growth is noted that the fastest published rate gives since all of the roots were done.',
  why: 'A slipped figure teaches a wrong rate of growth, and the next visit is planned by it.',
  source: {
    kind: 'published',
    cites: 'International Journal of Dermatology 44 (Suppl. 1), 2005, pages 6-9, two deviations above its fastest mean',
  },
  check(visit, { earlier }) {
    const found = foundOf(visit, earlier);
    return found === undefined ? NONE : [found];
  },
  bad: `
    product dev-6 "Cream developer" developer 6%
    range cream "Larkfield cream" permanent
    client wren-abbott "Wren Abbott"
      test skin 2026-08-01 11:00 cream read 2026-08-03 11:30 clear
    visit 2026-08-14 wren-abbott
      bowl A 40 cream 6/0 + 60 dev-6
      place A roots
    visit 2026-09-04 wren-abbott
      regrowth 45mm
               ^^^^
      bowl A 40 cream 6/0 + 60 dev-6
      place A roots`,
  good: `
    product dev-6 "Cream developer" developer 6%
    range cream "Larkfield cream" permanent
    client wren-abbott "Wren Abbott"
      test skin 2026-08-01 11:00 cream read 2026-08-03 11:30 clear
    visit 2026-08-14 wren-abbott
      bowl A 40 cream 6/0 + 60 dev-6
      place A roots
    visit 2026-09-04 wren-abbott
      regrowth 15mm
      bowl A 40 cream 6/0 + 60 dev-6
      place A roots`,
});
