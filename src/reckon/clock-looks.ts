import type { Seen } from '../records/schema/values.ts';
import { type ClockLines, mentionOf } from './clock-lines.ts';
import { checkBeforeOn } from './clock-problems.ts';
import type { ClockProblem, Looked, Minute } from './model.ts';
import { type Applied, type Mention, namesNothing, type SpokenOf } from './runs.ts';

/** When each run came off, where that is known. */
export type Offs = ReadonlyMap<Applied, Minute>;

/** The runs that a look at a minute is of, among those it speaks of: those on then, else the last of the bowl it names. */
const lookedAt = (
  spoken: readonly Applied[],
  minute: Minute | undefined,
  byBowl: boolean,
  offs: Offs,
): readonly Applied[] => {
  if (minute === undefined) return byBowl ? spoken : [];
  const begun = spoken.filter(({ firstOn }) => firstOn <= minute);
  const on = begun.filter((run) => minute <= (offs.get(run) ?? minute));
  if (on.length > 0 || !byBowl) return on;
  const last = begun.at(-1)?.firstOn;
  return begun.filter(({ firstOn }) => firstOn === last);
};

/** A look at bowl A is not one at A2 while both are on; once A is off, the hand writes A for what it mixed further. */
const ofVeryBowl = (runs: readonly Applied[], { bowls }: Mention): readonly Applied[] => {
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
  const looks = checks.map(({ fact, minute, place, about }): Looked => {
    const groups: readonly (Seen | undefined)[] = fact.seen.length > 0 ? fact.seen : [undefined];
    const byBowl = fact.bowls.length > 0;
    const seenOn = new Map<Applied, Seen[]>();
    let early: Applied | undefined;
    for (const seen of groups) {
      const mention = mentionOf(fact.bowls, seen?.zones ?? []);
      const of = spoken(mention);
      for (const run of ofVeryBowl(lookedAt(of, minute, byBowl, offs), mention))
        seenOn.set(run, [...(seenOn.get(run) ?? []), ...(seen === undefined ? [] : [seen])]);
      if (!namesNothing(mention)) early ??= lookedBefore(of, minute, byBowl, begins);
    }
    if (early !== undefined && minute !== undefined) problems.push(checkBeforeOn(place, early, minute));
    for (const [run, seen] of seenOn) ofRun.set(run, [...(ofRun.get(run) ?? []), { at: minute, seen, place, about }]);
    return { at: minute, seen: fact.seen, place, about };
  });
  return { looks, of: ofRun, problems };
};
