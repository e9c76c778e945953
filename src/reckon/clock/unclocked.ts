import type { SalonSettings } from '../../journal/salon.ts';
import type { Stood } from '../../journal/source.ts';
import type { Visit } from '../../records/schema/entry.ts';
import type { Duration } from '../../records/schema/values.ts';
import type { ClockProblem, FactsOf, Looked, Unclocked } from '../model.ts';
import { runsOfLine, spanOfMinutes } from './applied.ts';
import { closest } from './ends.ts';
import type { ClockLines, Line } from './lines.ts';
import { noMinutes, runName } from './problems.ts';
import { type Applied, namesNothing, speaker } from './runs.ts';

/**
 * What was put on without a time of day: `on T roots for 8min`, `on T lengths last 2min`, `off T 8min`. The minutes are
 * as typed, and no time of day is worked out of them.
 *
 * Reads: the clock lines of a visit. Gives: what went on so, for how long, what was seen of it.
 */

type OnLine = Line<FactsOf<'on'>>;

type Known = { readonly applied: Applied; readonly line: OnLine; off?: Line; readonly checks: Looked[] };

const minutesOf = (duration: Duration | undefined): Unclocked['minutes'] => duration && spanOfMinutes(duration);

const unclockedOf = ({ applied, line, off, checks }: Known): Unclocked => {
  const { bowl, zone, meant, place } = applied;
  const last = line.fact.last === true;
  const claim = off?.fact.word === 'off' && !last ? off.fact.claim : undefined;
  return {
    bowl,
    zone,
    meant,
    minutes: minutesOf(claim) ?? minutesOf(line.fact.minutes),
    last,
    checks,
    onPlace: place,
    offPlace: off?.place,
    about: (claim ?? line.fact.minutes)?.about === true,
  };
};

/** What a visit puts on without a clock, and the lines that speak of nothing else. */
export type UnclockedFound = {
  readonly unclocked: readonly Unclocked[];
  readonly problems: readonly ClockProblem[];
  /** Whether a line that ends things names something of these and nothing that has a clock. */
  readonly owns: (line: Line) => boolean;
};

const NOTHING: UnclockedFound = { unclocked: [], problems: [], owns: () => false };

/** Says once for each line what has neither minutes nor an `off` line of its own. */
const sayNoMinutes = (known: readonly Known[]): ClockProblem[] => {
  const said = new Map<number, { readonly applied: Applied; readonly names: string[] }>();
  for (const { applied, line, off } of known) {
    if (line.fact.minutes !== undefined || off !== undefined) continue;
    const same = said.get(applied.line);
    if (same === undefined) said.set(applied.line, { applied, names: [runName(applied)] });
    else same.names.push(runName(applied));
  }
  return [...said.values()].map(({ applied, names }) => noMinutes(applied, names));
};

/** Works out what a visit puts on without a clock; `runs` are those with one. */
export const unclockedIn = (
  visit: Stood<Visit>,
  zones: SalonSettings['zones'],
  mixed: ReadonlyMap<string, string | undefined>,
  { ons, ends, checks }: ClockLines,
  runs: readonly Applied[],
): UnclockedFound => {
  const lines = ons.filter(({ fact }) => fact.period === undefined);
  if (lines.length === 0) return NOTHING;
  const known = lines.flatMap((line) =>
    // The minute is never looked at: what is ordered by it is put in order of the lines.
    runsOfLine(visit, mixed, zones, line, 0).map((applied): Known => ({ applied, line, checks: [] })),
  );
  const of = speaker(
    known.map(({ applied }) => applied),
    zones,
  );
  const clocked = speaker(runs, zones);
  const spoken = (line: Line): Known[] => {
    if (namesNothing(line.mention)) return [];
    const named = of(line.mention);
    return known.filter(({ applied }) => named.includes(applied));
  };
  // A time of day ends what went on at one, where both are named.
  for (const line of ends)
    for (const one of spoken(line))
      if (line.minute === undefined || clocked(line.mention).length === 0)
        one.off = closest(one.off ? [one.off, line] : [line]) ?? line;
  for (const line of checks) {
    const { fact, minute, place, about } = line;
    if (fact.bowls.length === 0 && clocked(line.mention).length > 0) continue;
    for (const one of spoken(line)) one.checks.push({ at: minute, seen: fact.seen, place, about });
  }
  return {
    unclocked: known.map(unclockedOf),
    problems: sayNoMinutes(known),
    owns: (line) => spoken(line).length > 0 && clocked(line.mention).length === 0,
  };
};
