import { listed } from '../../reckon/say.ts';
import { matchLooked } from '../../reckon/zone-match.ts';
import { placeOf } from '../cite.ts';
import { anyMeetLoosely } from '../hair-meets.ts';
import { defineRule } from '../rule.ts';

export default defineRule({
  name: 'check-not-on',
  family: 'placement',
  severity: 'mind',
  over: 'visit',
  what: 'A check looks at a zone that nothing was put on at that visit.',
  why: 'A look filed under the wrong place teaches the wrong lift, and hides the look that is missing.',
  source: { kind: 'notation' },
  *check({ visit, clock, salon }) {
    // Where a line says no zone, all of the head may be meant, and brows or a beard.
    if (clock.runs.length === 0 || clock.runs.some(({ zone }) => zone === '')) return;
    const placed = visit.entry.facts.flatMap((fact) =>
      fact.word === 'place' || fact.word === 'on' ? fact.zones.map(({ zone }) => zone) : [],
    );
    const zones = [...new Set([...clock.runs.map(({ zone }) => zone), ...placed])];
    const isNear = (zone: string): boolean => zones.some((on) => matchLooked(on, zone, salon.zones) !== undefined);
    for (const fact of visit.entry.facts) {
      if (fact.word !== 'check') continue;
      const stray = fact.seen
        .flatMap((seen) => seen.zones)
        .find(({ zone }) => !anyMeetLoosely(zones, [zone], salon.zones) && !isNear(zone));
      if (stray === undefined) continue;
      yield {
        place: placeOf(visit, fact, stray.at),
        message: `The check looks at ${stray.zone}; what went on is on ${listed(zones)}.`,
        todo: `Write the zone that was looked at, or the \`on\` line of ${stray.zone}.`,
        label: 'nothing on there',
      };
      // The same slip goes through every look of a visit.
      return;
    }
  },
  bad: `
    range neon "Kelp direct" semi
      mix none
      shades teal
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 neon teal
      on 14:00 A hairline
      check 14:10 nape 7
                  ^^^^
      off 14:20 A`,
  good: `
    range neon "Kelp direct" semi
      mix none
      shades teal
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 neon teal
      on 14:00 A hairline
      check 14:10 hairline 7
      off 14:20 A`,
});
