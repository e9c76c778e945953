import type { ShelfItem } from '../../journal/shelf.ts';
import type { Run, VisitReckoned } from '../../reckon/model.ts';
import type { TimeLine } from '../../records/schema/shelf.ts';
import { clockText } from '../../text/dates.ts';
import type { Place } from '../../text/span.ts';
import { citeLine, placeOf } from '../cite.ts';
import { basesIn } from '../contents.ts';
import { defineRule, type Found } from '../rule.ts';
import { minutesOf, timeLineOf } from '../time-line.ts';
import { bowlOf, runText } from '../timed-runs.ts';

/** Minutes by which a look may be late before it counts as missing: a choice. */
const LATE = 2;

type Gap = {
  readonly run: Run;
  readonly item: ShelfItem;
  readonly line: TimeLine | undefined;
  readonly every: number;
  readonly from: number;
  readonly to: number;
  readonly place: Place;
};

/** The longest time of a run without a look, where it is longer than the line allows. */
const longestGap = (
  run: Run,
  runs: readonly Run[],
  item: ShelfItem,
  line: TimeLine,
  every: number,
): Gap | undefined => {
  const looks = [{ at: run.firstOn, place: run.onPlace }];
  for (const other of runs) {
    if (other.bowl !== run.bowl) continue;
    for (const { at, place } of other.checks) {
      // A look without a time says that someone looked, and not when.
      if (at === undefined && other === run) return undefined;
      // While a bowl is still going on, a look at any place of it is a look at all.
      if (at !== undefined && (other === run || (at >= run.firstOn && at <= run.allOn))) looks.push({ at, place });
    }
  }
  if (run.off !== undefined) looks.push({ at: run.off, place: run.onPlace });
  let gap: Gap | undefined;
  looks
    .sort((a, b) => a.at - b.at)
    .reduce(({ at: from, place }, next) => {
      if (next.at - from > (gap === undefined ? every + LATE : gap.to - gap.from))
        gap = { run, item, line, every, from, to: next.at, place };
      return next;
    });
  return gap;
};

function* gapsIn(visit: VisitReckoned, earlier: readonly VisitReckoned[]): Generator<Gap> {
  for (const run of visit.clock.runs) {
    const bowl = bowlOf(visit, run);
    const item = bowl && basesIn(bowl).find(({ kind }) => kind === 'lightener');
    if (bowl === undefined || item === undefined) continue;
    const line = timeLineOf(item, { visit, earlier, bowl, run });
    // The way of looking holds for every condition of the product, even where only its plain line says it.
    const looked =
      line?.checkEvery === undefined ? item.times.find(({ checkEvery }) => checkEvery !== undefined) : line;
    if (looked?.checkEvery !== undefined) {
      const gap = longestGap(run, visit.clock.runs, item, looked, minutesOf(looked.checkEvery).far);
      if (gap !== undefined) yield gap;
    } else if (run.checks.length === 0 && run.off !== undefined)
      yield { run, item, line: undefined, every: 0, from: run.firstOn, to: run.off, place: run.onPlace };
  }
}

const found = ({ run, item, line, every, from, to, place }: Gap): Found => ({
  place,
  message: `${runText(run)}, ${item.name}, has no check for ${to - from} min, ${clockText(from)} to ${clockText(to)}.`,
  expected:
    line === undefined
      ? 'Lightener is looked at while it is on (common practice).'
      : `${item.full} is looked at every ${every} min (${citeLine(item, line)}).`,
  todo: `Write the looks that were taken, as in \`check ${clockText(from + (every || 10))} ${[run.bowl, run.zone].filter(Boolean).join(' ')} orange\`.`,
  label: `${to - from} min without a look`,
  ...(line !== undefined && { also: [{ place: placeOf(item.stood, line, line.minutes.at), says: 'its time line' }] }),
});

export default defineRule({
  name: 'no-check',
  family: 'time',
  severity: 'fix',
  over: 'client',
  what: 'Lightener was on for longer than its time line allows without a look, or without any look.',
  why: 'Lift runs unevenly and cannot be undone, so lightener is watched; the looks are the record of it.',
  source: { kind: 'shelf', cites: 'the time line of the lightener (`check every 10 min`)' },
  caution: 'lightener',
  *check(_client, visits) {
    for (const [index, visit] of visits.entries()) {
      const worst = new Map<string | undefined, Gap>();
      for (const gap of gapsIn(visit, visits.slice(0, index))) {
        const known = worst.get(gap.run.bowl);
        if (known === undefined || gap.to - gap.from > known.to - known.from) worst.set(gap.run.bowl, gap);
      }
      for (const gap of worst.values()) yield found(gap);
    }
  },
  bad: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
      time 20-50 min from first-on, check every 10 min
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-6
      on 14:00 A top
      check 14:10 A orange
            ^^^^^
      check 14:35 A yellow
      off 14:40 A`,
  good: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
      time 20-50 min from first-on, check every 10 min
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-6
      on 14:00 A top
      check 14:10 A orange
      check 14:20 A gold
      check 14:30 A yellow
      off 14:40 A`,
});
