import type { SalonSettings } from '../../journal/salon.ts';
import type { Stood } from '../../journal/source.ts';
import type { Visit } from '../../records/schema/entry.ts';
import type { ClockProblem, FactsOf, Minute, PartOff } from '../model.ts';
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

export type PartsOff = {
  readonly of: ReadonlyMap<Applied, readonly PartOff[]>;
  /** Lines after which something of what they name is still on. */
  readonly partly: ReadonlySet<OffLine>;
  readonly problems: readonly ClockProblem[];
};

const NOTHING: PartsOff = { of: new Map(), partly: new Set(), problems: [] };

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
    if (!isWhole || fact.sections === undefined) return undefined;
    placed += fact.sections * (fact.mirror ? 2 : 1);
  }
  return placed === 0 ? undefined : placed;
};

const keyOf = ({ bowls, zones }: Mention): string => [[...bowls].sort(), [...zones].sort()].join('|');

/** What came off in part, by the lines that take off, in whatever order they were typed. */
export const partsOff = (
  lines: readonly OffLine[],
  spoken: SpokenOf,
  placedOf: (mention: Mention) => number | undefined,
): PartsOff => {
  if (lines.every(({ fact }) => fact.word !== 'off' || fact.sections === undefined)) return NOTHING;
  const timed = lines
    .filter((line): line is OffLine & { readonly minute: Minute } => line.minute !== undefined)
    .toSorted((a, b) => a.minute - b.minute);
  const of = new Map<Applied, PartOff[]>();
  const partly = new Set<OffLine>();
  const problems: ClockProblem[] = [];
  const off = new Map<string, number>();
  for (const [index, line] of timed.entries()) {
    const sections = line.fact.word === 'off' ? line.fact.sections : undefined;
    if (sections === undefined) continue;
    const { minute, mention } = line;
    const named = spoken(mention).filter((run) => run.firstOn <= minute);
    if (named.length === 0) continue;
    const placed = namesNothing(mention) ? undefined : placedOf(mention);
    const gone = (off.get(keyOf(mention)) ?? 0) + sections;
    off.set(keyOf(mention), gone);
    if (placed !== undefined && gone > placed) problems.push(sectionsOver(line.place, gone, placed));
    const isFollowed = timed.slice(index + 1).some((later) => spoken(later.mention).some((run) => named.includes(run)));
    // Without a count of what was placed, the last line that counts is the end of it.
    if (placed === undefined ? !isFollowed : gone >= placed) continue;
    partly.add(line);
    for (const run of named) {
      const own = of.get(run) ?? [];
      own.push({ minute, sections, placed, place: line.place });
      of.set(run, own);
    }
  }
  return { of, partly, problems };
};
