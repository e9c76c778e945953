import { namesIn } from '../../journal/named.ts';
import { placeOf } from '../../reckon/cite.ts';
import type { VisitReckoned } from '../../reckon/model.ts';
import { nearNames } from '../../text/near.ts';
import type { Place } from '../../text/span.ts';
import { STAGES } from '../../trade/stages.ts';
import { TONE_WORDS } from '../../trade/tone.ts';
import { ALONG, GROUPS, isZone, ZONES } from '../../trade/zones.ts';
import { alsoAt, nearMend } from '../problems.ts';
import { defineRule, foundEach, NONE } from '../rule.ts';

/** The salon’s, the client’s and the visit’s own places; looked for when first asked for, as few notes need them. */
const recordedZones = (
  visit: VisitReckoned['visit'],
  client: VisitReckoned['client'],
  salon: VisitReckoned['salon'],
): (() => ReadonlySet<string>) => {
  let own: Set<string> | undefined;
  return () => {
    if (own !== undefined) return own;
    own = new Set(salon.zones.keys());
    for (const { entry } of [...client.entries, visit])
      for (const fact of entry.facts) if (fact.word === 'zone') own.add(fact.zone.name);
    return own;
  };
};

type Named = { readonly place: Place; readonly again: Place[] };

/** The places named in a visit that nothing describes. */
const strangersIn = (
  visit: VisitReckoned['visit'],
  own: () => ReadonlySet<string>,
): ReadonlyMap<string, Named> | undefined => {
  let named: Map<string, Named> | undefined;
  for (const { name: zone, at, line, gives } of namesIn(visit.entry, 'zone')) {
    if (gives || isZone(zone) || zone.split(' ').every((word) => isZone(word) || own().has(word))) continue;
    named ??= new Map();
    const place = placeOf(visit, { line }, at);
    const before = named.get(zone);
    if (before === undefined) named.set(zone, { place, again: [] });
    else before.again.push(place);
  }
  return named;
};

export default defineRule({
  name: 'unknown-zone',
  family: 'names',
  severity: 'mind',
  bears: 'never',
  over: 'visit',
  what: 'A place is named that is neither the notation’s nor the salon’s, the client’s or the visit’s own.',
  why: 'A place that nothing describes cannot be found again on the head, and a slip hides what was done there.',
  source: { kind: 'notation' },
  check({ visit, client, salon }) {
    const own = recordedZones(visit, client, salon);
    const named = strangersIn(visit, own);
    if (named === undefined) return NONE;
    return foundEach([...named], ([zone, { place, again }]) => {
      const near = nearNames(zone, [...ZONES, ...ALONG, ...GROUPS, ...own(), ...STAGES, ...TONE_WORDS]);
      const line = `\`zone ${zone} "where it is"\``;
      return {
        place,
        message: `\`${zone}\` is no place that the notation, the salon or this client names.`,
        todo: near.length === 0 ? `Write ${line} under the client.` : `Write \`${near.join('` or `')}\`, or ${line}.`,
        ...nearMend(place, near, again),
        ...alsoAt(again),
      };
    });
  },
  bad: `
    range neon "Kelp direct" semi
      mix none
      shades teal
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 neon teal
      place A harline
              ^^^^^^^`,
  good: `
    range neon "Kelp direct" semi
      mix none
      shades teal
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 neon teal
      place A hairline`,
});
