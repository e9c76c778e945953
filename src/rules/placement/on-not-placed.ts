import { placingsOf } from '../../reckon/client/state.ts';
import { factsOf } from '../../reckon/facts-of.ts';
import { anyMeetLoosely } from '../../reckon/head/hair-meets.ts';
import { isAway } from '../../reckon/head/seen-at.ts';
import type { Run, Unclocked } from '../../reckon/model.ts';
import { listed } from '../../reckon/say.ts';
import type { Placing } from '../../records/schema/visit.ts';
import { defineRule, foundEach, NONE } from '../rule.ts';

const isPlacedAt = ({ bowls, zones }: Placing, bowl: string, zone: string): boolean =>
  zones.some((one) => one.zone === zone) && bowls.some(({ name }) => name.toUpperCase() === bowl);

/** Minutes at the end of a bowl's time in which its rest is combed through the lengths: common practice, no source. */
const LAST = 15;

/** Whether colour on the roots or the head is pulled through mids, lengths or ends for the last minutes of its time. */
const isPulledThrough = (run: Run | Unclocked, runs: readonly Run[]): boolean =>
  'firstOn' in run &&
  isAway(run.zone) &&
  run.off !== undefined &&
  run.off - run.allOn <= LAST &&
  runs.some((other) => other.bowl === run.bowl && !isAway(other.zone) && other.allOn <= run.firstOn);

export default defineRule({
  name: 'on-not-placed',
  family: 'placement',
  severity: 'mind',
  bears: 'that-day',
  over: 'visit',
  looksAt: { words: ['place'] },
  what: 'A bowl goes on a zone that none of its `place` lines names; lengths that it is pulled through for the last minutes are none.',
  why: 'The head map shows only what is placed, so that hair would be missing from it.',
  source: { kind: 'notation' },
  check({ visit, clock, salon }) {
    const placings = factsOf(visit, 'place');
    if (placings.length === 0) return NONE;
    const told: number[] = [];
    const putOn = [...clock.runs, ...clock.unclocked.filter(({ last }) => !last)];
    return foundEach(putOn, (run) => {
      const { bowl, zone, onPlace } = run;
      if (bowl === undefined || zone === '' || told.includes(onPlace.line) || isPulledThrough(run, clock.runs))
        return undefined;
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
