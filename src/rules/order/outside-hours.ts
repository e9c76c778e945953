import type { Run } from '../../reckon/model.ts';
import { clockText } from '../../text/dates.ts';
import type { Place } from '../../text/span.ts';
import { lineName } from '../cite.ts';
import { defineRule } from '../rule.ts';

/** Minutes by which a service may begin early or end late before it counts: a choice. */
const GRACE = 60;

const timesOf = ({
  firstOn,
  onPlace,
  off,
  offPlace,
}: Run): readonly { readonly at: number; readonly place: Place }[] => [
  { at: firstOn, place: onPlace },
  ...(off === undefined || offPlace === undefined ? [] : [{ at: off, place: offPlace }]),
];

export default defineRule({
  name: 'outside-hours',
  family: 'order',
  severity: 'mind',
  over: 'visit',
  what: 'Colour goes on or comes off more than an hour before the salon opens or after it closes.',
  why: 'A time typed twelve hours away moves every length of time that is reckoned from it.',
  source: { kind: 'policy', cites: 'its hours line' },
  *check({ salon, clock }) {
    const { hours, stood } = salon;
    const fact = stood?.entry.facts.findLast(({ word }) => word === 'hours');
    if (hours === undefined || stood === undefined || fact === undefined) return;
    for (const { at, place } of clock.runs.flatMap(timesOf)) {
      if (at >= hours.from - GRACE && at <= hours.to + GRACE) continue;
      yield {
        place,
        message: `${clockText(at)} is outside the hours, ${clockText(hours.from)} to ${clockText(hours.to)}.`,
        expected: `The salon is open ${clockText(hours.from)} to ${clockText(hours.to)} (its hours line, ${lineName(stood.file, stood.line + fact.line)}).`,
        todo: 'Correct the time, or keep it as it is: `allow outside-hours "…"`.',
        label: at < hours.from ? 'before opening' : 'after closing',
      };
      return;
    }
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
