import type { ShelfItem } from '../../journal/shelf.ts';
import { basesIn } from '../../reckon/bowl/contents.ts';
import { citeLine, placeOf } from '../../reckon/cite.ts';
import type { Run, VisitReckoned } from '../../reckon/model.ts';
import { minutesOf, timeLineOf } from '../../reckon/timing/time-line.ts';
import { bowlOf, runText } from '../../reckon/timing/timed-runs.ts';
import type { TimeLine } from '../../records/schema/shelf.ts';
import { clockText } from '../../text/dates.ts';
import { sentence } from '../../text/sentence.ts';
import type { Place } from '../../text/span.ts';
import { defineRule, type Found } from '../rule.ts';

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
  /** Whether someone looked in time, at what else was on of the same bowl. */
  readonly beside: boolean;
};

type Look = { readonly at: number; readonly place: Place };

/** The looks that a run counts as its own, and how many of them have no time. */
const ownLooks = (run: Run, runs: readonly Run[]): { readonly looks: Look[]; readonly untimed: number } => {
  const looks: Look[] = [];
  let untimed = 0;
  for (const other of runs) {
    if (other.bowl !== run.bowl) continue;
    for (const { at, place } of other.checks) {
      if (at === undefined && other === run) untimed++;
      // While a bowl is still going on, a look at any place of it is a look at all.
      if (at !== undefined && (other === run || (at >= run.firstOn && at <= run.allOn))) looks.push({ at, place });
    }
  }
  return { looks, untimed };
};

/** The looks at another place of the same bowl that was on together with a run, and those that no place of it answers. */
const nearLooks = (run: Run, { runs, looks }: VisitReckoned['clock']): Look[] => {
  const lines = new Set(runs.filter(({ bowl }) => bowl !== run.bowl).flatMap((other) => other.checks.map(lineOf)));
  return looks.flatMap(({ at, place }) => {
    const isOn = at !== undefined && at >= run.firstOn && at <= (run.off ?? at);
    return isOn && !lines.has(place.line) ? [{ at, place }] : [];
  });
};

const lineOf = ({ place }: { readonly place: Place }): number => place.line;

type Span = { readonly from: number; readonly to: number; readonly place: Place };

const byTime = (a: Look, b: Look): number => a.at - b.at;

/**
 * The longest time between looks, where it is longer than allowed. A look without a time is one look, wherever it helps
 * most: the run is looked at often enough where those without a time can stand in all that is too long.
 */
const longestSpan = (run: Run, looks: readonly Look[], every: number, untimed = 0): Span | undefined => {
  const first = { at: run.firstOn, place: run.onPlace };
  const all = [first, ...looks];
  // Whoever takes foils out in order looks at each.
  const off = run.sections?.firstOff ?? run.off;
  if (off !== undefined) all.push({ at: off, place: run.onPlace });
  let longest: Span | undefined;
  let last: Look = first;
  let missing = 0;
  for (const look of all.sort(byTime)) {
    missing += Math.max(0, Math.ceil((look.at - last.at - LATE) / every) - 1);
    if (look.at - last.at > (longest === undefined ? every + LATE : longest.to - longest.from))
      longest = { from: last.at, to: look.at, place: last.place };
    last = look;
  }
  return missing <= untimed ? undefined : longest;
};

const isLightener = ({ kind }: ShelfItem): boolean => kind === 'lightener';

const gapIn = (visit: VisitReckoned, earlier: readonly VisitReckoned[], run: Run): Gap | undefined => {
  const { clock } = visit;
  const bowl = bowlOf(visit, run);
  const item = bowl && basesIn(bowl).find(isLightener);
  if (bowl === undefined || item === undefined) return undefined;
  const { looks, untimed } = ownLooks(run, clock.runs);
  const line = timeLineOf(item, { visit, earlier, bowl, run });
  // The way of looking holds for every condition of the product, even where only its plain line says it.
  const looked = line?.checkEvery === undefined ? item.times.find(({ checkEvery }) => checkEvery !== undefined) : line;
  if (looked?.checkEvery !== undefined) {
    const every = minutesOf(looked.checkEvery).far;
    const span = longestSpan(run, looks, every, untimed);
    if (span === undefined) return undefined;
    const beside = longestSpan(run, nearLooks(run, clock), every) === undefined;
    return { ...span, run, item, line: looked, every, beside };
  }
  if (run.checks.length > 0 || run.off === undefined) return undefined;
  const beside = nearLooks(run, clock).length > 0;
  return { run, item, line: undefined, every: 0, from: run.firstOn, to: run.off, place: run.onPlace, beside };
};

const found = ({ run, item, line, every, from, to, place, beside }: Gap): Found => ({
  place,
  severity: beside || line === undefined ? 'mind' : 'fix',
  message: `${runText(run)}, ${item.name}, has no check for ${to - from} min, ${clockText(from)} to ${clockText(to)}${beside ? '; the looks name other places' : ''}.`,
  expected:
    line === undefined
      ? 'Lightener is looked at while it is on (common practice).'
      : sentence`${item.full} is looked at every ${every} min (${citeLine(item, line)}).`,
  todo: `Write the looks that were taken, as in \`check ${clockText(from + (every || 10))} ${[run.bowl, run.zone].filter(Boolean).join(' ')} orange\`; with none, why: \`because no-check "…"\`.`,
  label: `${to - from} min without a look`,
  figures: { unseenMinutes: to - from, ...(line !== undefined && { everyMinutes: every }) },
  ...(line !== undefined && { also: [{ place: placeOf(item.stood, line, line.minutes.at), says: 'its time line' }] }),
});

/** One that nobody looked through before one seen beside; of two alike the longer. */
const isWorse = (gap: Gap, known: Gap): boolean =>
  gap.beside === known.beside ? gap.to - gap.from > known.to - known.from : known.beside;

/** The worst gap of each bowl of a visit. */
const worstIn = (visit: VisitReckoned, earlier: readonly VisitReckoned[]): Iterable<Gap> => {
  const worst = new Map<string | undefined, Gap>();
  for (const run of visit.clock.runs) {
    const gap = gapIn(visit, earlier, run);
    const known = gap && worst.get(run.bowl);
    if (gap !== undefined && (known === undefined || isWorse(gap, known))) worst.set(run.bowl, gap);
  }
  return worst.values();
};

export default defineRule({
  name: 'no-check',
  family: 'time',
  severity: 'fix',
  bears: 'that-day',
  over: 'visit',
  looksAt: { kinds: ['lightener'] },
  what: 'Lightener was on for longer than its time line allows without a look, or without any; `mind` where only another place of its bowl was looked at, or the shelf asks for no looks.',
  why: 'Lift runs unevenly and cannot be undone, so lightener is watched; the looks are the record of it.',
  source: { kind: 'shelf', cites: 'the time line of the lightener (`check every 10 min`)' },
  caution: 'lightener',
  check: (visit, { earlier }) => Array.from(worstIn(visit, earlier), found),
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
