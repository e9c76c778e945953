import { placeOf } from '../../reckon/cite.ts';
import { placingsOf } from '../../reckon/client/state.ts';
import { mixedBowls } from '../../reckon/clock/applied.ts';
import { factsOf } from '../../reckon/facts-of.ts';
import { anyMeetLoosely } from '../../reckon/head/hair-meets.ts';
import type { PutOn } from '../../reckon/model.ts';
import type { Name, Zone } from '../../records/schema/values.ts';
import { defineRule, foundEach } from '../rule.ts';

const isNamed = (bowls: readonly Name[], { bowl }: PutOn): boolean =>
  bowls.some(({ name }) => name.toUpperCase() === bowl);

export default defineRule({
  name: 'placed-not-on',
  family: 'placement',
  severity: 'mind',
  bears: 'that-day',
  over: 'visit',
  looksAt: { words: ['place'] },
  what: 'A zone is placed, and the `on` lines of its bowl name others and never this one.',
  why: 'Without its time on, nobody knows how long that hair took, or whether it was done.',
  source: { kind: 'notation' },
  check({ visit, clock, salon }) {
    const told: string[] = [];
    // Few visits mix more of a bowl.
    const mixed = factsOf(visit, 'more').length === 0 ? undefined : mixedBowls(visit);
    const putOn = [...clock.runs, ...clock.unclocked];
    return foundEach(factsOf(visit, 'place'), (fact) => {
      const isOn = ({ zone }: Zone): boolean => putOn.some((run) => run.zone === zone && isNamed(fact.bowls, run));
      if (fact.zones.every(isOn)) return undefined;
      const names = fact.bowls.map(({ name }) => name.toUpperCase());
      // What `more` made goes where its bowl is placed, unless it has a place of its own.
      const isMore = (bowl: string): boolean =>
        names.includes(mixed?.get(bowl) ?? '') && placingsOf(visit, bowl).length === 0;
      const runs = putOn.filter(({ bowl }) => bowl === undefined || names.includes(bowl) || isMore(bowl));
      const on = runs.map(({ zone }) => zone);
      const [run] = runs;
      if (run === undefined || on.includes('') || names.some((name) => told.includes(name))) return undefined;
      const missing = fact.zones.find(({ zone }) => !on.includes(zone) && !anyMeetLoosely(on, [zone], salon.zones));
      if (missing === undefined) return undefined;
      // Where it went on a zone that is not placed, one of the two names is a slip, and that is said there.
      const placed = names.flatMap((name) =>
        placingsOf(visit, name).flatMap(({ zones }) => zones.map(({ zone }) => zone)),
      );
      if (on.some((zone) => !anyMeetLoosely(placed, [zone], salon.zones))) return undefined;
      told.push(...names);
      return {
        place: placeOf(visit, fact, missing.at),
        message: `Bowl ${names.join(' and ')} is placed at ${missing.zone}, and no \`on\` line of it says when.`,
        todo: `Write \`on\` with the time and ${missing.zone}, or \`leave ${missing.zone}\` if it was not done.`,
        label: 'no time on',
        also: [{ place: run.onPlace, says: 'went on elsewhere' }],
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
      place A hairline, nape
                        ^^^^
      on 14:00 A hairline
      off 14:20 A`,
  good: `
    range neon "Kelp direct" semi
      mix none
      shades teal
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 neon teal
      place A hairline, nape
      on 14:00 A hairline, nape
      off 14:20 A`,
});
