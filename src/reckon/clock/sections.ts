import type { Minute, PartOff, Run } from '../model.ts';
import type { Applied, Ending } from './runs.ts';

/**
 * Sections that came off in the order they went on: `off 14:48-15:01`. The first off belongs to the first on and the last
 * to the last, over all bowls that the line ends; what went on between comes off linearly between. An even hand is a
 * choice of ours: the notes give the two ends only. Where they came off in parts, `off 15:10 A x6`, each part went on in
 * its turn.
 *
 * Reads: runs, what came off of them before, and their endings. Gives: for each run its last off, and how long its sections were on.
 */

export type SectionsOff = { readonly off: Minute; readonly sections: NonNullable<Run['sections']> };

/** Of a run that came off in parts: the first off are those that went on first, by an even hand. */
const inParts = (
  { firstOn, allOn }: Applied,
  parts: readonly PartOff[],
  { minute, end }: Ending,
): SectionsOff | undefined => {
  const [first] = parts;
  if (minute === undefined || first === undefined) return undefined;
  const off = end ?? minute;
  if (parts.some(({ share }) => share === undefined)) {
    const least = Math.max(0, Math.min(first.minute - firstOn, off - allOn));
    return { off, sections: { firstOff: first.minute, least, most: Math.max(0, off - allOn), untold: true } };
  }
  let from = firstOn;
  const minutes: number[] = [];
  for (const part of [...parts, { minute, until: off, share: 1 }]) {
    const to = firstOn + (part.share ?? 1) * (allOn - firstOn);
    minutes.push(Math.round(part.minute - from), Math.round(part.until - to));
    from = to;
  }
  return {
    off,
    sections: { firstOff: first.minute, least: Math.max(0, Math.min(...minutes)), most: Math.max(...minutes) },
  };
};

/** When the sections of some runs came off, where they came off in parts or their ending is a span; others are left out. */
export const sectionsOff = (
  runs: readonly Applied[],
  endings: ReadonlyMap<Applied, Ending>,
  parts: ReadonlyMap<Applied, readonly PartOff[]>,
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
  for (const [run, own] of parts) {
    const ending = endings.get(run);
    const whole = ending && inParts(run, own, ending);
    if (whole !== undefined) off.set(run, whole);
  }
  return off;
};
