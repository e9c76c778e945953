import type { Minute, Run } from '../model.ts';
import type { Applied, Ending } from './runs.ts';

/**
 * Sections that came off in the order they went on: `off 14:48-15:01`. The first off belongs to the first on and the last
 * to the last, over all bowls that the line ends; what went on between comes off linearly between. An even hand is a
 * choice of ours: the notes give the two ends only.
 *
 * Reads: runs and their endings. Gives: for each run its last off, and how long its sections were on.
 */

export type SectionsOff = { readonly off: Minute; readonly sections: NonNullable<Run['sections']> };

/** When the sections of some runs came off, where their ending is a span; those of another ending are left out. */
export const sectionsOff = (
  runs: readonly Applied[],
  endings: ReadonlyMap<Applied, Ending>,
): ReadonlyMap<Applied, SectionsOff> => {
  const off = new Map<Applied, SectionsOff>();
  for (const ending of new Set(endings.values())) {
    const { minute: from, end: to } = ending;
    if (from === undefined || to === undefined || to <= from) continue;
    const own = runs.filter((run) => endings.get(run) === ending);
    const begins = Math.min(...own.map(({ firstOn }) => firstOn));
    const ends = Math.max(...own.map(({ allOn }) => allOn));
    // Of one moment on, nobody knows when the last section was: only the first is held against the clock.
    const pace = ends === begins ? 0 : (to - from) / (ends - begins);
    const offOf = (on: Minute): Minute => Math.round(from + (on - begins) * pace);
    for (const run of own) {
      const [first, last] = [offOf(run.firstOn) - run.firstOn, offOf(run.allOn) - run.allOn];
      const sections = { firstOff: offOf(run.firstOn), least: Math.min(first, last), most: Math.max(first, last) };
      off.set(run, { off: pace === 0 ? to : offOf(run.allOn), sections });
    }
  }
  return off;
};
