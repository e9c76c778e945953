import type { ShelfItem } from '../../journal/shelf.ts';
import { caution } from '../../trade/cautions.ts';
import { cautionIn } from '../bowl/caution-in.ts';
import { basesIn } from '../bowl/contents.ts';
import type { BowlReckoned, Minute, Run, VisitReckoned } from '../model.ts';
import { type MinutesOn, minutesOf, minutesOn, timeLineOf } from './time-line.ts';
import { bowlOf } from './timed-runs.ts';

/**
 * What is on the hair at the moment, with what its shelf lines ask for: in minutes of the day, so that any clock can be
 * held against it.
 *
 * Reads: a visit's clock and the shelf. Gives: bounds. Runs again: when the visit or the shelf changes.
 */
export type OpenRun = {
  readonly run: Run;
  /** The product with the nearest far end, and its time; undefined where no `time` line applies. */
  readonly time: OpenTime | undefined;
  /** When it was looked at last, or went on. */
  readonly lastLook: Minute;
  /** When the next look is due by the product's own `check every`. */
  readonly nextLook: Minute | undefined;
  /** Undefined where no caution is true of it: a direct dye. */
  readonly caution: string | undefined;
};

export type OpenTime = {
  readonly product: string;
  readonly from: MinutesOn['from'];
  /** When the near and the far end of its time are reached. */
  readonly nearAt: Minute;
  readonly farAt: Minute;
  readonly near: number;
  readonly far: number;
};

/** A minute later than any of a visit, to which an open run is taken to last. */
const LATE: Minute = 100_000;

type On = { readonly visit: VisitReckoned; readonly earlier: readonly VisitReckoned[]; readonly bowl: BowlReckoned };

const timeOf = (item: ShelfItem, run: Run, { visit, earlier, bowl }: On): OpenTime | undefined => {
  const line = timeLineOf(item, { visit, earlier, bowl, run });
  const lasting = { ...run, off: LATE, fromFirst: LATE - run.firstOn, fromAll: LATE - run.allOn };
  const on = line && minutesOn(item, line, lasting, visit.clock.runs);
  if (line === undefined || on === undefined) return undefined;
  const { near, far } = minutesOf(line.minutes);
  const since = LATE - on.whole;
  return { product: item.full, from: on.from, near, far, nearAt: since + near, farAt: since + far };
};

/** As the rule on missing looks has it: the way of looking holds for every condition of the product. */
const everyOf = (item: ShelfItem, run: Run, { visit, earlier, bowl }: On): number | undefined => {
  const line = timeLineOf(item, { visit, earlier, bowl, run });
  const every = line?.checkEvery ?? item.times.find(({ checkEvery }) => checkEvery !== undefined)?.checkEvery;
  return every && minutesOf(every).far;
};

/** Everything of a visit that is still on, in the order it went on. `earlier`: the client's visits before it. */
export const openRuns = (visit: VisitReckoned, earlier: readonly VisitReckoned[]): OpenRun[] =>
  visit.clock.runs
    .filter(({ off, told }) => off === undefined && told === undefined)
    .map((run) => {
      const bowl = bowlOf(visit, run);
      const bases = bowl === undefined ? [] : basesIn(bowl);
      const on = bowl && { visit, earlier, bowl };
      const times = on === undefined ? [] : bases.flatMap((item) => timeOf(item, run, on) ?? []);
      const every = on === undefined ? [] : bases.flatMap((item) => everyOf(item, run, on) ?? []);
      const lastLook = Math.max(run.firstOn, ...run.checks.flatMap(({ at }) => at ?? []));
      const topic = bowl === undefined ? false : cautionIn(bowl, 'lightener', 'peroxide');
      return {
        run,
        time: times.toSorted((a, b) => a.farAt - b.farAt)[0],
        lastLook,
        nextLook: every.length === 0 ? undefined : lastLook + Math.min(...every),
        caution: topic === false ? undefined : caution(topic),
      };
    });
