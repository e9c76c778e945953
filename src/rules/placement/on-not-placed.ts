import { listed } from '../../reckon/say.ts';
import { placingsOf } from '../../reckon/state.ts';
import type { Placing } from '../../records/schema/visit.ts';
import { factsOf } from '../facts-of.ts';
import { anyMeetLoosely } from '../hair-meets.ts';
import { defineRule, foundEach, NONE } from '../rule.ts';

const isPlacedAt = ({ bowls, zones }: Placing, bowl: string, zone: string): boolean =>
  zones.some((one) => one.zone === zone) && bowls.some(({ name }) => name.toUpperCase() === bowl);

export default defineRule({
  name: 'on-not-placed',
  family: 'placement',
  severity: 'mind',
  over: 'visit',
  what: 'A bowl goes on a zone that none of its `place` lines names.',
  why: 'The head map shows only what is placed, so that hair would be missing from it.',
  source: { kind: 'notation' },
  check({ visit, clock, salon }) {
    const placings = factsOf(visit, 'place');
    if (placings.length === 0) return NONE;
    const told: number[] = [];
    return foundEach(clock.runs, ({ bowl, zone, onPlace }) => {
      if (bowl === undefined || zone === '' || told.includes(onPlace.line)) return undefined;
      if (placings.some((placing) => isPlacedAt(placing, bowl, zone))) return undefined;
      const zones = placingsOf(visit, bowl).flatMap((placing) => placing.zones.map((one) => one.zone));
      if (zones.length === 0 || anyMeetLoosely(zones, [zone], salon.zones)) return undefined;
      told.push(onPlace.line);
      return {
        place: onPlace,
        message: `Bowl ${bowl} goes on ${zone}, and is placed at ${listed(zones)}.`,
        todo: `Write \`place ${bowl} ${zone}\`, or the zone that was meant.`,
        label: `${zone} not placed`,
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
      place A hairline
      on 14:00 A nape
         ^^^^^
      off 14:20 A`,
  good: `
    range neon "Kelp direct" semi
      mix none
      shades teal
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 neon teal
      place A hairline, nape
      on 14:00 A nape, hairline
      off 14:20 A`,
});
