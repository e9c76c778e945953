import type { ShelfItem } from '../../journal/shelf.ts';
import type { TimeLine } from '../../records/schema/shelf.ts';
import { recently } from '../../text/recently.ts';
import type { Place } from '../../text/span.ts';
import { basesIn } from '../bowl/contents.ts';
import type { BowlReckoned, PutOn, Run, Unclocked, VisitReckoned } from '../model.ts';
import { type MinutesOn, minutesOf, minutesOn, minutesUnclocked, timeLineOf } from './time-line.ts';

/** A run that is over, held against the `time` line of one item in its bowl. */
export type TimedRun = {
  readonly visit: VisitReckoned;
  readonly bowl: BowlReckoned;
  readonly run: Run | Unclocked;
  readonly item: ShelfItem;
  readonly line: TimeLine;
  /** What the minutes count from, in words. */
  readonly from: MinutesOn['from'];
  /** When it came off; undefined without a clock. */
  readonly off: number | undefined;
  readonly minutes: number;
  /** The minutes since the whole of the bowl was on, where its time counts so: what the far end is held against. */
  readonly whole: number;
  readonly near: number;
  readonly far: number;
};

/** The bowl that a run puts on. */
export const bowlOf = ({ bowls }: VisitReckoned, run: PutOn): BowlReckoned | undefined =>
  bowls.find(({ name }) => name === run.bowl);

const timesOf = (visit: VisitReckoned, earlier: readonly VisitReckoned[]): readonly TimedRun[] => {
  const times: TimedRun[] = [];
  const { runs, unclocked } = visit.clock;
  for (const run of [...runs, ...unclocked]) {
    const bowl = bowlOf(visit, run);
    if (bowl === undefined) continue;
    for (const item of basesIn(bowl)) {
      const line = timeLineOf(item, { visit, earlier, bowl, run });
      const on = line && ('firstOn' in run ? minutesOn(item, line, run, runs) : minutesUnclocked(run));
      if (line === undefined || on === undefined) continue;
      const { near, far } = minutesOf(line.minutes);
      const { from, off, minutes, whole } = on;
      times.push({ visit, bowl, run, item, line, from, off, minutes, whole, near, far });
    }
  }
  return times;
};

/**
 * Every run of a visit that has come off, with each item of its bowl that has a `time` line for it. Asked by every rule
 * on times.
 */
export const timedRuns = recently(timesOf);

const mostOfEach = (
  own: readonly TimedRun[],
  isMore: (timed: TimedRun, known: TimedRun) => boolean,
): Iterable<TimedRun> => {
  const most = new Map<string, TimedRun>();
  for (const timed of own) {
    const known = most.get(timed.bowl.name);
    if (known === undefined || isMore(timed, known)) most.set(timed.bowl.name, timed);
  }
  return most.values();
};

const NO_RUNS: readonly TimedRun[] = [];

/** Of the runs of each bowl of a visit that are as asked for, the one that is so the most. */
export const ofEachBowl = (
  visit: VisitReckoned,
  earlier: readonly VisitReckoned[],
  isSo: (timed: TimedRun) => boolean,
  isMore: (timed: TimedRun, known: TimedRun) => boolean,
): readonly TimedRun[] => {
  const own = timedRuns(visit, earlier).filter(isSo);
  return own.length === 0 ? NO_RUNS : [...mostOfEach(own, isMore)];
};

/** `Bowl A the top`, as a message names a run. */
export const runText = ({ bowl, zone }: PutOn): string => {
  const name = `Bowl ${bowl}`;
  return zone === '' ? name : `${name} ${zone}`;
};

/** Where a run ends: the time it came off, else where it went on. */
export const endOf = ({ offPlace, onPlace }: PutOn): Place => offPlace ?? onPlace;
