import type { Seen } from '../../records/schema/values.ts';
import type { ClockProblem, Looked, Minute } from '../model.ts';
import { type ClockLines, mentionOf } from './lines.ts';
import { checkBeforeOn } from './problems.ts';
import { type Applied, type Ending, type Mention, namesNothing, type SpokenOf } from './runs.ts';

/** What ended each run, where something did. */
export type Offs = ReadonlyMap<Applied, Pick<Ending, 'minute'>>;

/** The runs that a look at a minute is of, among those it speaks of: those on then, else the last of the bowl it names. */
const lookedAt = (
  spoken: readonly Applied[],
  minute: Minute | undefined,
  byBowl: boolean,
  offs: Offs,
): readonly Applied[] => {
  if (minute === undefined) return byBowl ? spoken : [];
  const on = spoken.filter((run) => run.firstOn <= minute && minute <= (offs.get(run)?.minute ?? minute));
  if (on.length > 0 || !byBowl) return on;
  const last = spoken.findLast(({ firstOn }) => firstOn <= minute)?.firstOn;
  return spoken.filter(({ firstOn }) => firstOn === last);
};

/** A look at bowl A is not one at A2 while both are on; once A is off, the hand writes A for what it mixed further. */
const ofVeryBowl = (runs: readonly Applied[], { bowls }: Mention): readonly Applied[] => {
  if (runs.length < 2) return runs;
  const own = runs.filter(({ bowl }) => bowl !== undefined && bowls.includes(bowl));
  return own.length === 0 ? runs : own;
};

/** The first run that a look names and is before, where it cannot be a look between two bowls. */
const lookedBefore = (
  spoken: readonly Applied[],
  minute: Minute | undefined,
  byBowl: boolean,
  begins: Minute,
): Applied | undefined => {
  if (minute === undefined || spoken.some(({ firstOn }) => firstOn <= minute)) return undefined;
  return byBowl || minute < begins ? spoken[0] : undefined;
};

/**
 * Gives every check to the runs it is of, each with what was seen there. A check that names a bowl after it came off is
 * still of its last run; a check that names a zone alone, or nothing, is of what is on then. Runs are in order of the
 * clock.
 */
export const shareChecks = (
  checks: ClockLines['checks'],
  runs: readonly Applied[],
  offs: Offs,
  spoken: SpokenOf,
): {
  readonly looks: Looked[];
  readonly of: ReadonlyMap<Applied, readonly Looked[]>;
  readonly problems: ClockProblem[];
} => {
  const ofRun = new Map<Applied, Looked[]>();
  const problems: ClockProblem[] = [];
  const begins = runs[0]?.firstOn ?? 0;
  const give = (run: Applied, look: Looked): void => {
    const looks = ofRun.get(run);
    if (looks === undefined) ofRun.set(run, [look]);
    else looks.push(look);
  };
  const looks = checks.map((line): Looked => {
    const { fact, minute, place, about } = line;
    const byBowl = fact.bowls.length > 0;
    let early: Applied | undefined;
    const runsOf = (mention: Mention): readonly Applied[] => {
      const of = spoken(mention);
      if (!namesNothing(mention)) early ??= lookedBefore(of, minute, byBowl, begins);
      return ofVeryBowl(lookedAt(of, minute, byBowl, offs), mention);
    };
    const look: Looked = { at: minute, seen: fact.seen, place, about };
    if (fact.seen.length < 2) for (const run of runsOf(line.mention)) give(run, look);
    else {
      const seenOn = new Map<Applied, Seen[]>();
      for (const seen of fact.seen)
        for (const run of runsOf(mentionOf(fact.bowls, seen.zones))) {
          const more = seenOn.get(run);
          if (more === undefined) seenOn.set(run, [seen]);
          else more.push(seen);
        }
      for (const [run, seen] of seenOn) give(run, { at: minute, seen, place, about });
    }
    if (early !== undefined && minute !== undefined) problems.push(checkBeforeOn(place, early, minute));
    return look;
  });
  return { looks, of: ofRun, problems };
};
