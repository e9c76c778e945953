import { bowlsPutOn } from '../../reckon/bowl/applied.ts';
import { cautionIn } from '../../reckon/bowl/caution-in.ts';
import { basesIn, placeInBowl } from '../../reckon/bowl/contents.ts';
import { isLightening, zonesOfBowl } from '../../reckon/client/state.ts';
import {
  aimOf,
  type LightenedHair,
  lightenedHere,
  type Overlap,
  overlapOn,
  RETOUCH,
} from '../../reckon/hair/overlap-on.ts';
import { isAt } from '../../reckon/head/hair-meets.ts';
import { depthText } from '../../reckon/head/seen-at.ts';
import type { BowlReckoned, VisitReckoned } from '../../reckon/model.ts';
import { figure } from '../../reckon/say.ts';
import { matchZones } from '../../reckon/zone-match.ts';
import { defineRule, type Found, NONE } from '../rule.ts';

const BACK = /\b(?:tint[ -]?back|darker|back to (?:her|his|their) (?:own|natural)|go(?:ing)? dark)\b/iu;

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

const isBelowRoots = (zone: string): boolean => isAt(zone, 'mids', 'lengths', 'ends') && !isAt(zone, 'roots');

/** Whether lightened hair lies at a zone: roots of an earlier day have grown down the lengths. */
const liesAt = (visit: VisitReckoned, zone: string, { zones }: LightenedHair): boolean =>
  zones.length === 0 ||
  zones.some(
    (old) =>
      matchZones(old, zone, visit.salon.zones) !== undefined ||
      (isAt(old, 'roots') && matchZones(old.replace('roots', 'all'), zone, visit.salon.zones) !== undefined),
  );

/** Where a bowl for the new growth goes further down than that, over hair lightened before. */
const pastNewGrowth = (
  visit: VisitReckoned,
  earlier: readonly VisitReckoned[],
  bowl: BowlReckoned,
): { readonly zone: string; readonly lightened: LightenedHair } | undefined => {
  const zones = zonesOfBowl(visit, bowl.name);
  if (!zones.some(isBelowRoots) || !isRetouch(visit, earlier.at(-1), zones)) return undefined;
  const before = lightenedHere(visit, earlier);
  for (const zone of zones.filter(isBelowRoots)) {
    const lightened = before.find((one) => one.when !== visit.date && liesAt(visit, zone, one));
    if (lightened !== undefined) return { zone, lightened };
  }
  return undefined;
};

const whenText = (when: string | undefined): string =>
  when === undefined ? 'before' : `${when.length === 10 ? 'on' : 'in'} ${when}`;

const overBlonde = (bowl: BowlReckoned, { item, strength, start, lightened, proven, severity }: Overlap): Found => ({
  place: placeInBowl(bowl, (portion) => portion.item === item),
  severity,
  message: `Bowl ${bowl.name}, ${item.name} with ${figure(strength)} %, goes on ${start.zone === '' ? 'hair' : start.zone} of depth ${depthText(start.depth)}, lightened ${lightened === undefined ? 'before these notes' : whenText(lightened.when)}.`,
  expected:
    'Hair lightened before is left out, or taken with 6 % or less while it is no lighter than 8 (common practice).',
  todo:
    proven === 'placed'
      ? 'Write the zones it really went on, or why it went on again: `because overlap-on-lightened "…"`.'
      : `Write \`place ${bowl.name} roots …\`, if it stayed on the new growth; if not, why: \`because overlap-on-lightened "…"\`.`,
  label: `over depth ${depthText(start.depth)}`,
  also: [
    lightened === undefined
      ? { place: start.place, says: 'lighter than her own' }
      : { place: lightened.place, says: 'lightened here' },
  ],
});

function* found(visit: VisitReckoned, earlier: readonly VisitReckoned[]): Generator<Found> {
  let told = false;
  for (const bowl of bowlsPutOn(visit)) {
    const item = basesIn(bowl).find(({ kind }) => kind === 'permanent' || kind === 'high-lift' || kind === 'lightener');
    if (item === undefined) continue;
    const lightens = isLightening(bowl);
    const overlap = pastNewGrowth(visit, earlier, bowl);
    if (overlap === undefined) {
      const blonde = overlapOn(visit, earlier, bowl);
      // One a visit: further mixes and neighbouring foils are the same slip.
      if (blonde !== undefined && !told) yield overBlonde(bowl, blonde);
      told ||= blonde !== undefined;
      continue;
    }
    if (!lightens && isTintBack(visit)) continue;
    const { zone, lightened } = overlap;
    yield {
      place: placeInBowl(bowl, (portion) => portion.item === item),
      severity: lightens ? 'stop' : 'mind',
      message: `Bowl ${bowl.name}, ${item.name}, goes on ${zone}, lightened ${whenText(lightened.when)}.`,
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
  over: 'visit',
  what: 'A retouch puts lightener on lengths or ends that were lightened before (`mind` for permanent colour, none for a tint-back); or any lightener goes on hair that is blonde by lightening: `fix` with 9 % or more, on depth 10, or put on all of it; `mind` on depth 9, after a strand that was tried, or where no note says that it stayed on new growth. A bleach wash is none.',
  why: 'Hair that is lightened twice has little left to hold it together, and breaks where the two meet.',
  source: { kind: 'common practice' },
  caution: 'lightener',
  check: (visit, { earlier }) => (visit.bowls.length === 0 ? NONE : found(visit, earlier)),
  bad: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
    client wren-abbott "Wren Abbott"
      history 2026-03 lightener lengths
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-6
             ^^^^^^^
      place A roots, lengths off-scalp 1cm`,
  good: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
    client wren-abbott "Wren Abbott"
      history 2026-03 lightener lengths
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-6
      place A roots off-scalp 1cm`,
});
