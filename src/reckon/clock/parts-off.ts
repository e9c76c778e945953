import type { SalonSettings } from '../../journal/salon.ts';
import type { Stood } from '../../journal/source.ts';
import type { Visit } from '../../records/schema/entry.ts';
import type { ClockProblem, FactsOf, Minute, PartOff } from '../model.ts';
import { sectionsOf } from '../sections-of.ts';
import { matchZones } from '../zone-match.ts';
import { type Line, shownBowl } from './lines.ts';
import { sectionsOver } from './problems.ts';
import { type Applied, type Mention, namesNothing, type SpokenOf } from './runs.ts';

/**
 * Sections that came off before the rest: `off 15:10 A nape x6` of twelve. Six are still in, so what went on there goes on
 * until the rest is off, by a later line or by the count.
 *
 * Reads: the lines that take off, the runs and the `place` lines. Gives: for each run what came off of it before its end,
 * and the lines that end nothing. Runs again: when the visit changes.
 */

type OffLine = Line<FactsOf<'off' | 'stopped'>>;
type Timed = OffLine & { readonly minute: Minute };

export type PartsOff = {
  readonly of: ReadonlyMap<Applied, readonly PartOff[]>;
  /** Lines after which something of what they name is still on. */
  readonly partly: ReadonlySet<OffLine>;
  /** Of what such a line names, the runs that were all off by it. */
  readonly done: ReadonlyMap<Applied, OffLine>;
  readonly problems: readonly ClockProblem[];
};

const NOTHING: PartsOff = { of: new Map(), partly: new Set(), done: new Map(), problems: [] };

/**
 * The sections placed of what a line names; undefined where a `place` line gives no count, or counts other hair with it.
 */
export const sectionsPlaced = (
  { entry }: Stood<Visit>,
  { bowls, zones }: Mention,
  salonZones: SalonSettings['zones'],
): number | undefined => {
  let placed = 0;
  for (const fact of entry.facts) {
    if (fact.word !== 'place') continue;
    const own = fact.bowls.filter(({ name }) => bowls.length === 0 || bowls.includes(shownBowl(name)));
    if (own.length === 0) continue;
    const matches = fact.zones.map(({ zone }) =>
      zones.length === 0 ? 'same' : zones.map((one) => matchZones(one, zone, salonZones)).find(Boolean),
    );
    if (matches.every((match) => match === undefined) && matches.length > 0) continue;
    const isWhole =
      own.length === fact.bowls.length && matches.every((match) => match === 'same' || match === 'within');
    const sections = sectionsOf(fact);
    if (!isWhole || sections === undefined) return undefined;
    placed += sections;
  }
  return placed === 0 ? undefined : placed;
};

const sectionsIn = (line: OffLine): number | undefined => (line.fact.word === 'off' ? line.fact.sections : undefined);

const mentionOf = ({ bowl, zone }: Applied): Mention => ({
  bowls: bowl === undefined ? [] : [bowl],
  zones: zone === '' ? [] : [zone],
});

const keyOf = ({ bowls, zones }: Mention): string => [[...bowls].sort(), [...zones].sort()].join('|');

/** What came off in part, by the lines that take off, in whatever order they were typed. */
export const partsOff = (
  lines: readonly OffLine[],
  runs: readonly Applied[],
  spoken: SpokenOf,
  placedOf: (mention: Mention) => number | undefined,
): PartsOff => {
  if (lines.every((line) => sectionsIn(line) === undefined)) return NOTHING;
  const timed = lines
    .filter((line): line is Timed => line.minute !== undefined)
    .toSorted((a, b) => a.minute - b.minute);
  const of = new Map<Applied, PartOff[]>();
  const partly = new Set<OffLine>();
  const done = new Map<Applied, OffLine>();
  const problems: ClockProblem[] = [];

  /** Sections that went on in one run: as placed, else as counted off, where each line that takes it off counts. */
  const wentOn = (run: Applied): number | undefined => {
    if (runs.some((one) => one !== run && one.bowl === run.bowl && one.zone === run.zone)) return undefined;
    const placed = placedOf(mentionOf(run));
    if (placed !== undefined) return placed;
    const own = timed.filter(({ mention, minute }) => minute >= run.firstOn && spoken(mention).includes(run));
    const counts = own.flatMap((line) => (spoken(line.mention).length === 1 ? (sectionsIn(line) ?? []) : []));
    return counts.length === own.length ? counts.reduce((sum, one) => sum + one, 0) : undefined;
  };
  const known = new Map(runs.map((run) => [run, wentOn(run)]));
  /** Sections of each run that are off. */
  const gone = new Map<Applied, number>();
  /** Sections that are off by the lines that name the same, where the runs are not counted each by itself. */
  const goneBy = new Map<string, number>();

  const add = (run: Applied, line: Timed, sections: number, placed: number | undefined, share?: number): void => {
    const own = of.get(run) ?? [];
    own.push({ minute: line.minute, until: line.end ?? line.minute, sections, placed, share, place: line.place });
    of.set(run, own);
  };

  /** Takes off the sections that went on first; says whether that is all of them. */
  const takeInOrder = (line: Timed, sections: number, named: readonly Applied[], placed: number): boolean => {
    const before = named.reduce((sum, run) => sum + (gone.get(run) ?? 0), 0);
    if (before + sections > placed) problems.push(sectionsOver(line.place, before + sections, placed));
    const isAll = before + sections >= placed;
    let left = sections;
    for (const run of named) {
      const all = known.get(run) ?? 0;
      const taken = Math.min(left, all - (gone.get(run) ?? 0));
      if (taken <= 0) continue;
      left -= taken;
      const now = (gone.get(run) ?? 0) + taken;
      gone.set(run, now);
      if (isAll) continue;
      if (now === all) done.set(run, line);
      else add(run, line, taken, all, now / all);
    }
    return isAll;
  };

  /** Counts off where nobody can say of which run: all are on until the last. */
  const takeTogether = (line: Timed, sections: number, named: readonly Applied[], index: number): boolean => {
    const placed = namesNothing(line.mention) ? undefined : placedOf(line.mention);
    const all = (goneBy.get(keyOf(line.mention)) ?? 0) + sections;
    goneBy.set(keyOf(line.mention), all);
    if (placed !== undefined && all > placed) problems.push(sectionsOver(line.place, all, placed));
    const isFollowed = timed.slice(index + 1).some((later) => spoken(later.mention).some((run) => named.includes(run)));
    // Without a count of what was placed, the last line that counts is the end of it.
    if (placed === undefined ? !isFollowed : all >= placed) return true;
    for (const run of named) add(run, line, sections, placed);
    return false;
  };

  for (const [index, line] of timed.entries()) {
    const sections = sectionsIn(line);
    if (sections === undefined) continue;
    const named = spoken(line.mention).filter((run) => run.firstOn <= line.minute && !done.has(run));
    if (named.length === 0) continue;
    const counts = named.map((run) => known.get(run));
    const isCounted = counts.every((count) => count !== undefined);
    const placed = counts.reduce<number>((sum, count) => sum + (count ?? 0), 0);
    const isAll = isCounted ? takeInOrder(line, sections, named, placed) : takeTogether(line, sections, named, index);
    if (!isAll) partly.add(line);
  }
  return { of, partly, done, problems };
};
