import type { VisitReckoned } from '../../reckon/model.ts';
import { citeLine, placeOf } from '../cite.ts';
import { defineRule, type Found } from '../rule.ts';
import { speaksOfRun } from '../run-events.ts';
import { timeText } from '../time-line.ts';
import { endOf, runText, type TimedRun, timedRuns } from '../timed-runs.ts';

/** Whether the eye said it was done: what lightens or tones comes off by what is seen, not by the clock. */
const cameOffByEye = ({ run, item }: TimedRun): boolean =>
  (item.kind === 'lightener' || item.kind === 'toner' || item.kind === 'demi') &&
  run.checks.some(({ seen }) => seen.length > 0);

const isShort = (timed: TimedRun): boolean =>
  timed.minutes < timed.near &&
  !timed.run.about &&
  timed.run.meant === undefined &&
  !cameOffByEye(timed) &&
  !speaksOfRun(timed.visit, timed.run);

const found = ({ run, item, line, from, minutes, near }: TimedRun): Found => ({
  place: endOf(run),
  message: `${runText(run)} was on for ${minutes} min from ${from}, ${near - minutes} min short.`,
  expected: `${item.full} takes ${timeText(line, from)} (${citeLine(item, line)}).`,
  todo: 'Write what was seen when it came off, as in `check 15:05 A 9`, or why: `stopped 15:05 A "…"`.',
  label: `${minutes} min`,
  also: [{ place: placeOf(item.stood, line, line.minutes.at), says: 'its time line' }],
});

/** The shortest run of each bowl that is short of its time. */
const underTime = (visit: VisitReckoned, earlier: readonly VisitReckoned[]): Iterable<TimedRun> => {
  const worst = new Map<string, TimedRun>();
  for (const timed of timedRuns(visit, earlier)) {
    const known = worst.get(timed.bowl.name);
    if (isShort(timed) && (known === undefined || timed.minutes < known.minutes)) worst.set(timed.bowl.name, timed);
  }
  return worst.values();
};

export default defineRule({
  name: 'under-time',
  family: 'time',
  severity: 'mind',
  over: 'client',
  what: 'Something came off before the near end of its time line, and nothing seen or noted says why.',
  why: 'Colour taken off early holds badly; the next visit cannot tell whether it was meant.',
  source: { kind: 'shelf', cites: 'the time line of what was put on' },
  *check(_client, visits) {
    for (const [index, visit] of visits.entries())
      for (const timed of underTime(visit, visits.slice(0, index))) yield found(timed);
  },
  bad: `
    range neon "Kelp direct" semi
      mix none
      time 15-30 min from all-on
      shades teal
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 neon teal
      on 14:00-14:10 A
      off 14:20 A
          ^^^^^`,
  good: `
    range neon "Kelp direct" semi
      mix none
      time 15-30 min from all-on
      shades teal
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 neon teal
      on 14:00-14:10 A
      off 14:30 A`,
});
