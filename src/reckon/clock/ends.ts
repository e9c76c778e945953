import type { Duration } from '../../records/schema/values.ts';
import type { ClockProblem, FactsOf } from '../model.ts';
import { spanOfMinutes } from './applied.ts';
import type { Line } from './lines.ts';
import { type PartsOff, partsOff } from './parts-off.ts';
import { noOff, offBeforeAllOn, offBeforeOn, offWithoutOn, runName, saidMinutes } from './problems.ts';
import { type Applied, type Ending, endingsOf, hasRunOf, type Mention, namesNothing, type SpokenOf } from './runs.ts';

/** A line that takes something off. */
export type EndLine = Line<FactsOf<'off' | 'stopped'>>;
type OffLine = Line<FactsOf<'off'>>;

/** A hedged claim of minutes (`~40min`) may be this far out: common practice, no source. */
const HEDGED = 5;

const saidOf = (
  { minute, end, place }: EndLine,
  claim: Duration,
  runs: readonly Applied[],
): ClockProblem | undefined => {
  const said = spanOfMinutes(claim);
  const [first] = runs;
  if (said === undefined || minute === undefined || first === undefined) return undefined;
  const slack = claim.about ? HEDGED : 1;
  const fits = runs.some(({ firstOn, allOn }) =>
    [minute - firstOn, minute - allOn, (end ?? minute) - allOn].some(
      (real) => real >= said.least - slack && real <= said.most + slack,
    ),
  );
  return fits ? undefined : saidMinutes({ ...place, at: claim.at }, said.least, first, minute);
};

/** What a line names that no run is of: its bowls one by one, else its zones. */
const withoutRun = (mention: Mention, { runs, spoken }: Around): string | undefined => {
  if (mention.bowls.length === 0) return spoken(mention).length > 0 ? undefined : mention.zones.join(', ');
  if (mention.bowls.every((bowl) => hasRunOf(bowl, runs))) return undefined;
  const missing = mention.bowls.filter((bowl) => !hasRunOf(bowl, runs));
  return missing.map((bowl) => `bowl ${bowl}`).join(', ');
};

const isBefore = (a: Ending, b: Ending): boolean =>
  a.minute !== undefined && b.minute !== undefined && a.minute < b.minute;

/** Of lines without a time that name one thing, the one that names its place. */
export const closest = <L extends { readonly mention: Mention }>(lines: readonly L[]): L | undefined =>
  lines.find(({ mention }) => mention.zones.length > 0) ?? lines[0];

type Open = { readonly run: Applied; readonly names: string[] };

/** Says what no `off` line ends: one problem for each `on` line. */
const sayOpen = (open: readonly Open[], said: ReadonlySet<Applied>, parts: PartsOff): ClockProblem[] =>
  open.filter(({ run }) => !said.has(run)).map(({ run, names }) => noOff(run, names, parts.of.get(run)));

/**
 * Says which `off` lines end nothing, and which open runs are said with that. A bowl that is not mixed has a problem of
 * its own, so neither a line nor a run that names it is said again.
 */
const sayWithoutOn = (
  offs: readonly EndLine[],
  open: readonly Open[],
  did: ReadonlySet<EndLine>,
  around: Around,
): { readonly problems: ClockProblem[]; readonly said: ReadonlySet<Applied> } => {
  const problems: ClockProblem[] = [];
  const said = new Set<Applied>();
  const isMixed = (bowl: string | undefined): boolean => bowl === undefined || around.mixed.has(bowl);
  for (const line of offs) {
    const { bowls, zones } = line.mention;
    const strange = !bowls.every(isMixed);
    const isNameless = namesNothing(line.mention);
    const known = strange ? { bowls: bowls.filter(isMixed), zones } : line.mention;
    const named = isNameless ? '' : withoutRun(known, around);
    const isIdle = isNameless ? line.minute !== undefined && !did.has(line) : named !== undefined;
    if (!isIdle && !strange) continue;
    const meant = open.filter(({ run }) => line.minute !== undefined && run.firstOn <= line.minute);
    for (const { run } of meant) said.add(run);
    if (strange || named === undefined || meant.some(({ run }) => !isMixed(run.bowl))) continue;
    problems.push(offWithoutOn(line.place, named, isNameless ? undefined : meant[0]?.run));
  }
  return { problems, said };
};

/** What the ends of runs are worked out among. */
export type Around = {
  readonly runs: readonly Applied[];
  readonly spoken: SpokenOf;
  /** The bowls that the visit mixes. */
  readonly mixed: Pick<ReadonlySet<string>, 'has'>;
  /** The sections placed of what a line names, where they are counted. */
  readonly placedOf: (mention: Mention) => number | undefined;
};

/**
 * Finds the ending of every run: its `off`, else a `stopped`. Says which runs have none, which lines come before their
 * run, which end nothing, and which claim other minutes. Bowls that are not mixed are said elsewhere.
 */
export const endRuns = (
  all: readonly EndLine[],
  around: Around,
): {
  readonly endings: ReadonlyMap<Applied, EndLine>;
  readonly parts: PartsOff['of'];
  readonly problems: ClockProblem[];
} => {
  const { runs, spoken } = around;
  const parts = partsOff(all, runs, spoken, around.placedOf);
  // What takes off a part ends nothing: the rest is still in.
  const lines = parts.partly.size === 0 ? all : all.filter((line) => !parts.partly.has(line));
  const problems: ClockProblem[] = [...parts.problems];
  const offs = lines.filter((line): line is OffLine => line.fact.word === 'off');
  const byOff = endingsOf<EndLine>(offs, spoken);
  const endings = byOff.of;
  for (const [run, line] of parts.done) endings.set(run, line);
  if (offs.length < lines.length) {
    const stops = lines.filter(({ fact }) => fact.word === 'stopped');
    for (const [run, stop] of endingsOf(stops, spoken).of) {
      const off = endings.get(run);
      // What was stopped before is not among everything that an `off` without a name takes off.
      if (off === undefined || (namesNothing(off.mention) && isBefore(stop, off))) endings.set(run, stop);
    }
  }
  const open: Open[] = [];
  const said = new Set<Ending>();
  const say = (line: Ending, problem: ClockProblem): void => {
    if (!said.has(line)) problems.push(problem);
    said.add(line);
  };
  for (const run of runs) {
    const end = endings.get(run);
    const lastOff = end?.end ?? end?.minute;
    if (end?.fact.word === 'off' && lastOff !== undefined && lastOff < run.allOn)
      say(end, offBeforeAllOn(end.place, run, lastOff));
    if (end !== undefined) continue;
    const own = lines.filter(({ mention }) => spoken(mention).includes(run));
    const untimed = closest(own.filter(({ minute }) => minute === undefined));
    const before = own.find((line) => line.fact.word === 'off' && !namesNothing(line.mention) && !byOff.did.has(line));
    const same = open.find((one) => one.run.line === run.line);
    if (untimed !== undefined) endings.set(run, untimed);
    else if (before?.minute !== undefined) say(before, offBeforeOn(before.place, run, before.minute));
    else if (same !== undefined && !parts.of.has(run)) same.names.push(runName(run));
    else open.push({ run, names: [runName(run)] });
  }
  const without = sayWithoutOn(offs, open, byOff.did, around);
  problems.push(...without.problems);
  if (open.length > 0) problems.push(...sayOpen(open, without.said, parts));
  for (const line of offs) {
    const { claim } = line.fact;
    if (claim === undefined) continue;
    const ended = runs.filter((run) => endings.get(run) === line);
    const claimed = saidOf(line, claim, ended);
    if (claimed !== undefined) problems.push(claimed);
  }
  return { endings, parts: parts.of, problems };
};
