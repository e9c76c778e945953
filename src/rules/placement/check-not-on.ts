import { placeOf } from '../../reckon/cite.ts';
import { factsOf } from '../../reckon/facts-of.ts';
import { anyMeetLoosely } from '../../reckon/head/hair-meets.ts';
import type { VisitReckoned } from '../../reckon/model.ts';
import { listed } from '../../reckon/say.ts';
import { matchLooked } from '../../reckon/zone-match.ts';
import { defineRule, NONE } from '../rule.ts';

/** Every zone that something was put on or was to be put on, each once. */
const zonesOn = ({ visit, clock }: VisitReckoned): string[] => {
  const zones = new Set([...clock.runs, ...clock.unclocked].map(({ zone }) => zone));
  for (const fact of visit.entry.facts)
    if (fact.word === 'place' || fact.word === 'on') for (const { zone } of fact.zones) zones.add(zone);
  return [...zones];
};

export default defineRule({
  name: 'check-not-on',
  family: 'placement',
  severity: 'mind',
  bears: 'that-day',
  over: 'visit',
  looksAt: { words: ['check'] },
  what: 'A check looks at a zone that nothing was put on at that visit.',
  why: 'A look filed under the wrong place teaches the wrong lift, and hides the look that is missing.',
  source: { kind: 'notation' },
  check(reckoned) {
    const { visit, clock, salon } = reckoned;
    const checks = factsOf(visit, 'check');
    const putOn = [...clock.runs, ...clock.unclocked];
    // Where a line says no zone, all of the head may be meant, and brows or a beard.
    if (checks.length === 0 || putOn.length === 0 || putOn.some(({ zone }) => zone === '')) return NONE;
    let zones: readonly string[] | undefined;
    for (const fact of checks)
      for (const seen of fact.seen)
        for (const { zone, at } of seen.zones) {
          if (putOn.some((run) => run.zone === zone)) continue;
          zones ??= zonesOn(reckoned);
          if (anyMeetLoosely(zones, [zone], salon.zones)) continue;
          if (zones.some((on) => matchLooked(on, zone, salon.zones) !== undefined)) continue;
          // The same slip goes through every look of a visit.
          return [
            {
              place: placeOf(visit, fact, at),
              message: `The check looks at ${zone}; what went on is on ${listed(zones)}.`,
              todo: `Write the zone that was looked at, or the \`on\` line of ${zone}.`,
              label: 'nothing on there',
            },
          ];
        }
    return NONE;
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
