import type { SalonSettings } from '../../journal/salon.ts';
import type { Stood } from '../../journal/source.ts';
import type { Visit } from '../../records/schema/entry.ts';
import type { Name } from '../../records/schema/values.ts';
import { placeOf } from '../cite.ts';
import type { ClockProblem, ClockReckoned, FactsOf, Minute, Run } from '../model.ts';
import { mixedBowls, runsOfLine, spanOfMinutes } from './applied.ts';
import { sayDoubts, withoutDoubtful } from './doubts.ts';
import { type EndLine, endRuns } from './ends.ts';
import { type Heating, heatingOf, heats, heatWithin } from './heat.ts';
import { allLines, type ClockLines, clockLines, eachClock, type Line, shownBowl } from './lines.ts';
import { shareChecks } from './looks.ts';
import { sectionsPlaced } from './parts-off.ts';
import { bowlUnnamed, headWithoutZero, noSuchBowl, secondZero, spanBackwards } from './problems.ts';
import { minuteAfterOn } from './relative.ts';
import { type Applied, type SpokenOf, speaker } from './runs.ts';
import { type SectionsOff, sectionsOff } from './sections.ts';
import { unclockedIn } from './unclocked.ts';

/**
 * The clock of a visit: what was on where, from when to when, and who looked.
 *
 * Reads: the visit's lines and the salon's hours and zones. Gives: runs, looks and what does not add up.
 * Runs again: when the visit or the salon changes.
 */

/** Names of the bowls that a visit mixes, in order, each with the bowl that a `more` line made it from. */
type Mixed = ReadonlyMap<string, string | undefined>;

const sayUnknownBowls = (visit: Stood<Visit>, lines: readonly Line[], mixed: Mixed): ClockProblem[] => {
  const problems: ClockProblem[] = [];
  let said: Set<string> | undefined;
  const look = (names: readonly Name[], line: number): void => {
    for (const { name, at } of names) {
      const bowl = shownBowl(name);
      if (mixed.has(bowl) || said?.has(bowl)) continue;
      said ??= new Set();
      said.add(bowl);
      problems.push(noSuchBowl(placeOf(visit, { line }, at), bowl, [...mixed.keys()]));
    }
  };
  for (const { fact } of lines) look(fact.bowls, fact.line);
  for (const fact of visit.entry.facts) {
    if (fact.word !== 'place') continue;
    look(fact.bowls, fact.line);
    if (fact.turn !== undefined) look(fact.turn, fact.line);
  }
  return problems;
};

const sayBackwards = (lines: readonly Line[]): ClockProblem[] => {
  const problems: ClockProblem[] = [];
  for (const { minute, end, place } of lines)
    if (minute !== undefined && end !== undefined && end < minute) problems.push(spanBackwards(place, minute, end));
  return problems;
};

const WITHOUT_ZERO: ReadonlySet<ClockProblem['kind']> = new Set([
  'no-off',
  'off-without-on',
  'off-before-on',
  'check-before-on',
]);

/** Says once a visit that times count from the zero of the head and nothing says when that was, or that two lines do. */
const sayZero = (visit: Stood<Visit>): ClockProblem[] => {
  const [first, ...more] = visit.entry.facts.flatMap((fact) => (fact.word === 'zero' ? [fact] : []));
  if (first !== undefined)
    return more.map((fact) => secondZero(placeOf(visit, fact, fact.time.at), placeOf(visit, first, first.time.at)));
  const problems: ClockProblem[] = [];
  for (const fact of visit.entry.facts)
    eachClock(fact, (clock, line) => {
      if (clock?.head !== undefined && problems.length === 0)
        problems.push(headWithoutZero(placeOf(visit, { line }, clock.at), clock.head));
    });
  return problems;
};

/** Says once for each line what went on without a letter, where several bowls are mixed and no `place` line tells. */
const sayUnnamed = (runs: readonly Applied[], mixed: Mixed): ClockProblem[] => {
  if (mixed.size < 2 || runs.every(({ bowl }) => bowl !== undefined)) return [];
  const unnamed = new Map<number, Applied>();
  for (const run of runs) if (run.bowl === undefined) unnamed.set(run.line, run);
  return [...unnamed.values()].map((run) => bowlUnnamed(run, [...mixed.keys()]));
};

const byClock = (a: Applied, b: Applied): number => a.firstOn - b.firstOn || a.line - b.line;

type Settled = {
  readonly runs: readonly Applied[];
  readonly spoken: SpokenOf;
  readonly lines: Omit<ClockLines, 'ons'>;
  readonly problems: readonly ClockProblem[];
};

/** Everything put on, and the lines with their minutes settled: first the times of day, then what counts from them. */
const settle = (visit: Stood<Visit>, zones: SalonSettings['zones'], mixed: Mixed, lines: ClockLines): Settled => {
  const runs: Applied[] = [];
  const apply = (line: Line<FactsOf<'on'>>): void => {
    if (line.minute === undefined) return;
    for (const run of runsOfLine(visit, mixed, zones, line, line.minute)) runs.push(run);
  };
  for (const line of lines.ons) apply(line);
  runs.sort(byClock);
  const first = speaker(runs, zones);
  if (allLines(lines).every(({ after }) => after === undefined)) return { runs, spoken: first, lines, problems: [] };

  const problems: ClockProblem[] = [];
  const settled = <L extends Line>(line: L, spoken: SpokenOf): L => {
    const { after, mention, place } = line;
    if (after === undefined) return line;
    const found = minuteAfterOn({ after, place, mention, ends: line.fact.word === 'off' }, lines.ends, spoken);
    if (typeof found === 'number') return { ...line, minute: found };
    problems.push(found);
    return line;
  };
  for (const line of lines.ons) if (line.after !== undefined) apply(settled(line, first));
  runs.sort(byClock);
  const spoken = speaker(runs, zones);
  return {
    runs,
    spoken,
    lines: {
      ends: lines.ends.map((line) => settled(line, spoken)),
      checks: lines.checks.map((line) => settled(line, spoken)),
      heats: lines.heats.map((line) => settled(line, spoken)),
      others: lines.others.map((line) => settled(line, spoken)),
    },
    problems,
  };
};

const toldBy = (ending: EndLine | undefined): number | undefined =>
  ending?.fact.word === 'off' && ending.after === undefined && ending.fact.claim !== undefined
    ? spanOfMinutes(ending.fact.claim)?.most
    : undefined;

const isDrying = (line: Line): line is Line<FactsOf<'dry'>> => line.fact.word === 'dry';

const runOf = (
  applied: Applied,
  ending: EndLine | undefined,
  inOrderOff: SectionsOff | undefined,
  heatings: readonly Heating[],
  dryings: readonly Heating[],
  checks: Run['checks'],
): Run => {
  const { bowl, zone, firstOn, allOn, spanned, meant, place } = applied;
  const off = inOrderOff?.off ?? ending?.minute;
  const firstOff = inOrderOff?.sections.firstOff ?? off;
  let heat = 0;
  for (const heating of heatings) heat += heatWithin(heating, applied, off);
  // What never came off by the notes was off when it was dried.
  const dried = off === undefined ? [] : dryings.filter(({ from }) => from !== undefined);
  const hot = [...heatings, ...dried].filter((heating) => heats(heating, applied, off));
  return {
    bowl,
    zone,
    firstOn,
    allOn,
    spanned,
    off,
    fromFirst: firstOff === undefined ? undefined : firstOff - firstOn,
    fromAll: off === undefined || off < allOn ? undefined : off - allOn,
    told: off === undefined ? toldBy(ending) : undefined,
    sections: inOrderOff?.sections,
    meant,
    heat,
    ...(hot.length > 0 && { heats: hot.map(({ place: at, says }) => ({ place: at, says })) }),
    checks,
    onPlace: place,
    offPlace: ending?.place,
    about: applied.about || ending?.about === true,
  };
};

const NO_LOOKS: Run['checks'] = [];

const inOrder = (problems: readonly ClockProblem[]): ClockProblem[] =>
  problems.toSorted((a, b) => a.place.line - b.place.line || a.place.at - b.place.at);

/** The clock of one visit in a salon. Never throws: what cannot be settled is left out and said. */
export const reckonClock = (visit: Stood<Visit>, salon: SalonSettings): ClockReckoned => {
  const mixed = mixedBowls(visit);
  const typed = clockLines(visit, salon.hours);
  const all = allLines(typed);
  const { runs, spoken, lines, problems } = settle(visit, salon.zones, mixed, typed);
  const clockless = unclockedIn(visit, salon.zones, mixed, typed, runs);
  const ended = endRuns(
    lines.ends.filter((line) => !clockless.owns(line)),
    { runs, spoken, mixed, placedOf: (mention) => sectionsPlaced(visit, mention, salon.zones) },
  );
  const sections = sectionsOff(runs, ended.endings, ended.parts);
  let last: Minute | undefined;
  for (const { minute, end = minute } of ended.endings.values())
    if (end !== undefined && (last === undefined || end > last)) last = end;
  const offs = new Map([...ended.endings].map(([run, ending]) => [run, { minute: ending.end ?? ending.minute }]));
  const checks = shareChecks(lines.checks, runs, offs, spoken);
  const heatings = lines.heats.map((line) => heatingOf(line, spoken));
  const dryings = lines.others.filter(isDrying).map((line) => heatingOf(line, spoken));
  const said = sayUnknownBowls(visit, all, mixed).concat(
    sayDoubts(visit, salon),
    sayBackwards(all),
    sayUnnamed(runs, mixed),
    problems,
    ended.problems,
    clockless.problems,
    checks.problems,
  );
  const ofZero = sayZero(visit);
  const isUntold = ofZero.some(({ also }) => also === undefined);
  // Without its zero a line has no time, and what ends or looks at it cannot be held against anything.
  const heard = ofZero.concat(isUntold ? said.filter(({ kind }) => !WITHOUT_ZERO.has(kind)) : said);
  const [first] = runs;
  return {
    runs: runs.map((run) => {
      const own = runOf(
        run,
        ended.endings.get(run),
        sections.get(run),
        heatings,
        dryings,
        checks.of.get(run) ?? NO_LOOKS,
      );
      const partsOff = ended.parts.get(run);
      return partsOff === undefined ? own : { ...own, partsOff };
    }),
    unclocked: clockless.unclocked,
    looks: checks.looks,
    problems: heard.length === 0 ? heard : inOrder(withoutDoubtful(heard)),
    span: first === undefined || last === undefined ? undefined : last - first.firstOn,
  };
};
