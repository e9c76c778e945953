import type { SalonSettings } from '../../journal/salon.ts';
import { placeOf } from '../../reckon/cite.ts';
import type { Run } from '../../reckon/model.ts';
import { clockText } from '../../text/dates.ts';
import { lineName, sentence } from '../../text/sentence.ts';
import type { Place } from '../../text/span.ts';
import { defineRule, NONE } from '../rule.ts';

/** Minutes by which a service may begin early or end late before it counts: a choice. */
const GRACE = 60;

type Hours = NonNullable<SalonSettings['hours']>;

type Timed = { readonly at: number; readonly place: Place };

const isOutside = (at: number, { from, to }: Hours): boolean => at < from - GRACE || at > to + GRACE;

/** The first time of a visit at which something goes on or comes off outside the hours. */
const strayIn = (runs: readonly Run[], hours: Hours): Timed | undefined => {
  for (const { firstOn, onPlace, off, offPlace } of runs) {
    if (isOutside(firstOn, hours)) return { at: firstOn, place: onPlace };
    if (off !== undefined && offPlace !== undefined && isOutside(off, hours)) return { at: off, place: offPlace };
  }
  return undefined;
};

export default defineRule({
  name: 'outside-hours',
  family: 'order',
  severity: 'mind',
  bears: 'never',
  over: 'visit',
  what: 'Colour goes on or comes off more than an hour before the salon opens or after it closes.',
  why: 'A time typed twelve hours away moves every length of time that is reckoned from it.',
  source: { kind: 'policy', cites: 'its hours line' },
  check({ salon, clock }) {
    const { hours, stood } = salon;
    const stray = hours && strayIn(clock.runs, hours);
    const fact = stray && stood?.entry.facts.findLast(({ word }) => word === 'hours');
    if (hours === undefined || stood === undefined || stray === undefined || fact === undefined) return NONE;
    const { at, place } = stray;
    return [
      {
        place,
        message: `${clockText(at)} is outside the hours, ${clockText(hours.from)} to ${clockText(hours.to)}.`,
        expected: sentence`The salon is open ${clockText(hours.from)} to ${clockText(hours.to)} (its hours line, ${lineName(placeOf(stood, fact))}).`,
        todo: 'Correct the time, or keep it as it is: `because outside-hours "…"`.',
        label: at < hours.from ? 'before opening' : 'after closing',
      },
    ];
  },
  bad: `
    salon harbour "Harbour Row"
      hours 9:00-19:00
    range neon "Kelp direct" semi
      mix none
      shades teal
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 neon teal
      on 02:00 A
         ^^^^^
      off 02:20 A`,
  good: `
    salon harbour "Harbour Row"
      hours 9:00-19:00
    range neon "Kelp direct" semi
      mix none
      shades teal
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 neon teal
      on 14:00 A
      off 14:20 A`,
});
