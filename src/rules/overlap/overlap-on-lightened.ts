import type { BowlReckoned, VisitReckoned } from '../../reckon/model.ts';
import { isLightening, type Lightened, lightenedBefore, zonesOfBowl } from '../../reckon/state.ts';
import { matchZones } from '../../reckon/zone-match.ts';
import { bowlsPutOn } from '../applied.ts';
import { cautionIn } from '../caution-in.ts';
import { basesIn, placeInBowl } from '../contents.ts';
import { isAt } from '../hair-meets.ts';
import { defineRule, type Found } from '../rule.ts';

const RETOUCH = /\b(?:roots?|regrowth|retouch|re-touch|touch[ -]?up)\b/iu;
const BACK = /\b(?:tint[ -]?back|darker|back to (?:her|his|their) (?:own|natural)|go(?:ing)? dark)\b/iu;

const aimOf = ({ visit }: VisitReckoned): string =>
  visit.entry.facts.flatMap((fact) => (fact.word === 'aim' ? [fact.text] : [])).join(' ');

/** Whether a bowl is for the new growth: by its zones, else by what was asked for or left for today by the last visit. */
const isRetouch = (visit: VisitReckoned, last: VisitReckoned | undefined, zones: readonly string[]): boolean =>
  zones.some((zone) => isAt(zone, 'roots')) ||
  RETOUCH.test(aimOf(visit)) ||
  (last?.visit.entry.facts ?? []).some(
    (fact) => fact.word === 'next' && fact.changes.some(({ text }) => RETOUCH.test(text)),
  );

/** Whether a visit means to go darker: a tint-back goes over the old blonde on purpose. */
const isTintBack = (visit: VisitReckoned): boolean => {
  const depths = (word: 'start' | 'want'): readonly number[] =>
    visit.visit.entry.facts.flatMap((fact) =>
      fact.word === word ? fact.seen.flatMap(({ depth }) => (depth === undefined ? [] : [depth.value])) : [],
    );
  const [want, start] = [depths('want'), depths('start')];
  return BACK.test(aimOf(visit)) || (want.length > 0 && start.length > 0 && Math.max(...want) < Math.max(...start));
};

/** Whether lightened hair lies at a zone: roots of an earlier day have grown down the lengths. */
const liesAt = (visit: VisitReckoned, zone: string, { zones }: Lightened): boolean =>
  zones.length === 0 ||
  zones.some(
    (old) =>
      matchZones(old, zone, visit.salon.zones) !== undefined ||
      (isAt(old, 'roots') && matchZones(old.replace('roots', 'all'), zone, visit.salon.zones) !== undefined),
  );

const isBelowRoots = (zone: string): boolean => isAt(zone, 'mids', 'lengths', 'ends') && !isAt(zone, 'roots');

const overlapOf = (
  visit: VisitReckoned,
  visits: readonly VisitReckoned[],
  bowl: BowlReckoned,
): { readonly zone: string; readonly lightened: Lightened } | undefined => {
  const zones = zonesOfBowl(visit, bowl.name);
  if (!zones.some(isBelowRoots)) return undefined;
  const earlier = visits.slice(0, visits.indexOf(visit));
  if (!isRetouch(visit, earlier.at(-1), zones)) return undefined;
  const before = lightenedBefore(visit.client, earlier, visit.date);
  for (const zone of zones.filter(isBelowRoots)) {
    const lightened = before.find((one) => one.when !== visit.date && liesAt(visit, zone, one));
    if (lightened !== undefined) return { zone, lightened };
  }
  return undefined;
};

function* found(visit: VisitReckoned, visits: readonly VisitReckoned[]): Generator<Found> {
  for (const bowl of bowlsPutOn(visit)) {
    const item = basesIn(bowl).find(({ kind }) => kind === 'permanent' || kind === 'high-lift' || kind === 'lightener');
    const overlap = item && overlapOf(visit, visits, bowl);
    if (item === undefined || overlap === undefined) continue;
    const lightens = isLightening(bowl);
    if (!lightens && isTintBack(visit)) continue;
    const { zone, lightened } = overlap;
    const when =
      lightened.when === undefined ? 'before' : `on ${lightened.when}`.replace(/on (\d{4}(-\d\d)?)$/, 'in $1');
    yield {
      place: placeInBowl(bowl, (portion) => portion.item === item),
      severity: lightens ? 'stop' : 'mind',
      message: `Bowl ${bowl.name}, ${item.name}, goes on ${zone}, lightened ${when}.`,
      expected: 'A retouch stays on the new growth and stops at the hair that is lightened already (common practice).',
      todo: `Write the zones it really went on, or what went on the ${zone} as a bowl of its own; if it overlapped, why: \`because overlap-on-lightened "…"\`.`,
      label: `goes on ${zone} too`,
      caution: cautionIn(bowl, 'lightener', 'peroxide'),
      also: [{ place: lightened.place, says: 'lightened here' }],
    };
  }
}

export default defineRule({
  name: 'overlap-on-lightened',
  family: 'overlap',
  severity: 'stop',
  bears: 'that-day',
  over: 'client',
  what: 'A retouch puts lightener on lengths or ends that were lightened before; `mind` for permanent colour. A tint-back may.',
  why: 'Hair that is lightened twice has little left to hold it together, and breaks where the two meet.',
  source: { kind: 'common practice' },
  caution: 'lightener',
  *check(_client, visits) {
    for (const visit of visits) yield* found(visit, visits);
  },
  bad: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
    client wren-abbott "Wren Abbott"
      history 2026-03 lightener lengths
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-6
             ^^^^^^^
      place A roots, lengths on-scalp`,
  good: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
    client wren-abbott "Wren Abbott"
      history 2026-03 lightener lengths
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-6
      place A roots on-scalp`,
});
