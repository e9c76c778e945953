import { listed } from '../../reckon/say.ts';
import { placingsOf } from '../../reckon/state.ts';
import { anyMeetLoosely } from '../hair-meets.ts';
import { defineRule } from '../rule.ts';

export default defineRule({
  name: 'on-not-placed',
  family: 'placement',
  severity: 'mind',
  over: 'visit',
  what: 'A bowl goes on a zone that none of its `place` lines names.',
  why: 'The head map shows only what is placed, so that hair would be missing from it.',
  source: { kind: 'notation' },
  *check({ visit, clock, salon }) {
    const told = new Set<number>();
    for (const { bowl, zone, onPlace } of clock.runs) {
      if (bowl === undefined || zone === '' || told.has(onPlace.line)) continue;
      const placings = placingsOf(visit, bowl);
      const zones = placings.flatMap((placing) => placing.zones.map((one) => one.zone));
      if (zones.length === 0 || anyMeetLoosely(zones, [zone], salon.zones)) continue;
      told.add(onPlace.line);
      yield {
        place: onPlace,
        message: `Bowl ${bowl} goes on ${zone}, and is placed at ${listed(zones)}.`,
        todo: `Write \`place ${bowl} ${zone}\`, or the zone that was meant.`,
        label: `${zone} not placed`,
      };
    }
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
