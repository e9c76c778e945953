import { clientParts } from '../journal/groups.ts';
import type { Shared } from '../journal/join.ts';
import type { ClientFile, Journal } from '../journal/journal.ts';
import type { Source, Standing, Stood } from '../journal/source.ts';
import { entryLines, recordLines } from '../journal/where.ts';
import { placeOf } from '../reckon/cite.ts';
import type { VisitReckoned } from '../reckon/model.ts';
import type { HandOn } from '../reckon/timing/hands.ts';
import type { Notice } from '../records/notice.ts';
import type { UnplacedFinding } from '../text/finding.ts';
import { forgetRecent } from '../text/recently.ts';
import type { Ground } from '../text/span.ts';
import { wholeFile } from '../text/span.ts';
import { caution } from '../trade/cautions.ts';
import { RULES } from './all.ts';
import { dispatcher } from './looks-at.ts';
import { tuned } from './policy.ts';
import { problemsOf } from './problems.ts';
import { holdsReason } from './reason-words.ts';
import type { Subject, Subjects } from './reasons.ts';
import { type Desk, type Found, NONE, type ProblemKind, type Rule } from './rule.ts';
import { skinTestFound, testedAt } from './skin-tests.ts';

/**
 * Running the rules over a part of the journal: one client, one file's lines that belong to no client, or what all
 * share. Each part is found apart from the others, so that a change runs again only what it touched.
 */

const BY_NAME: ReadonlyMap<string, Rule> = new Map(RULES.map((rule) => [rule.name, rule]));

type ProblemRule = Extract<Rule, { over: 'problem' }>;

const only = <O extends Rule['over']>(over: O): Extract<Rule, { over: O }>[] =>
  RULES.filter((rule): rule is Extract<Rule, { over: O }> => rule.over === over);

const ENTRY_RULES = only('entry');
/** Asks of a visit the rules that can find anything there. */
const askVisitRules = dispatcher(only('visit'));
const BOTH_RULES = only('shelf and clients');
const CLIENT_RULES = [...only('client'), ...BOTH_RULES];
const FINDING_RULES = only('findings');
const SKIN_TEST_RULES = only('skin test');
const SHELF_RULES = only('shelf');
const DAY_RULES = only('day');

/** The rule of each kind of problem; a bowl's unknown name is found with the visit's others. */
const OF_PROBLEM: ReadonlyMap<ProblemKind, ProblemRule> = new Map(
  only('problem').flatMap((rule) => rule.kinds.map((kind) => [kind, rule])),
);

/** The remark of a finding's own lines that says why, in words that the rule accepts. */
const ownReason = ({ accepts }: Rule, { place, also }: Found, { remarkAt }: Subjects): string | undefined => {
  if (accepts === undefined) return undefined;
  const lines = [place, ...(also ?? []).map((one) => one.place)];
  const remarks = lines.flatMap((line) => remarkAt(line, place) ?? []);
  return remarks.find((remark) => holdsReason(remark, accepts));
};

const toFinding = (
  rule: Rule,
  found: Found,
  { client, reasons, salon }: Subject,
  subjects: Subjects,
  own?: string,
): UnplacedFinding => {
  const { severity = rule.severity, caution: topic = rule.caution, ...said } = found;
  const reason = reasons.get(rule.name) ?? (severity === 'stop' ? undefined : own);
  const finding: UnplacedFinding = {
    rule: rule.name,
    key: subjects.keyOf(rule.name, found.place),
    severity,
    ...said,
    ...(topic !== undefined && topic !== false && { caution: caution(topic) }),
    ...(client !== undefined && { client }),
    ...(reason !== undefined && { reason }),
  };
  return tuned(finding, salon);
};

const foundOf = (ground: Ground, notice: Notice): Found => {
  const { put } = notice;
  const place = placeOf(ground, notice, notice.at);
  return {
    place,
    message: notice.message,
    ...(notice.todo !== undefined && { todo: notice.todo }),
    ...(notice.label !== undefined && { label: notice.label }),
    ...(put && {
      mend: {
        title: put.title,
        edits: [{ place: { ...place, at: put.at ?? notice.at }, put: put.text }],
        sure: put.sure,
      },
    }),
  };
};

const noticed = (ground: Ground, notice: Notice, subject: Subject, subjects: Subjects): UnplacedFinding =>
  // Every notice has its rule: a test holds the two lists together.
  toFinding(BY_NAME.get(notice.rule) as Rule, foundOf(ground, notice), subject, subjects);

const addAll = (
  all: UnplacedFinding[],
  rule: Rule,
  every: Iterable<Found>,
  subjectOf: (found: Found) => Subject,
  subjects: Subjects,
): void => {
  // As nearly always.
  if (every === NONE) return;
  for (const found of every)
    all.push(toFinding(rule, found, subjectOf(found), subjects, ownReason(rule, found, subjects)));
};

/** What the reader and the rules on single entries find in one entry. */
const inEntry = (stood: Stood, lines: () => readonly string[], subjects: Subjects, all: UnplacedFinding[]): void => {
  for (const notice of stood.notices) all.push(noticed(stood, notice, subjects.ofEntry(stood), subjects));
  if (stood.entry.facts.length < 2) return;
  const typed = lines();
  for (const rule of ENTRY_RULES) addAll(all, rule, rule.check(stood, typed), () => subjects.ofEntry(stood), subjects);
};

/** What the reckoning of a visit could not settle, by the rules of its kinds. */
const unsettledIn = (visit: VisitReckoned, desk: Desk, add: (rule: Rule, found: readonly Found[]) => void): void => {
  const problems = problemsOf(visit);
  if (problems.length === 0) return;
  const byRule = new Map<ProblemRule, Found[]>();
  for (const { kind, found } of problems) {
    const rule = OF_PROBLEM.get(kind);
    const known = rule && byRule.get(rule);
    if (known !== undefined) known.push(found);
    else if (rule !== undefined) byRule.set(rule, [found]);
  }
  for (const [rule, all] of byRule) if (!rule.unless?.(visit, desk)) add(rule, rule.found?.(all, desk) ?? all);
};

/** How the skin tests of what a visit put on stand, where that is to be told. */
const skinTestsIn = (visit: VisitReckoned, desk: Desk, add: (rule: Rule, found: readonly Found[]) => void): void => {
  const tested = testedAt(visit);
  if (tested.every(({ standing }) => standing.status === 'valid')) return;
  for (const rule of SKIN_TEST_RULES) {
    const found = skinTestFound(visit, tested, rule.stands, rule.todo);
    if (found.length > 0 && !rule.unless?.(visit, desk)) add(rule, found);
  }
};

/** Everything found in what is noted of one client. */
export const findInClient = (
  journal: Journal,
  subjects: Subjects,
  client: ClientFile,
  visits: readonly VisitReckoned[],
  on: string | undefined,
): UnplacedFinding[] => {
  const all: UnplacedFinding[] = [];
  for (const stood of [...client.entries, ...client.visits])
    inEntry(stood, () => (journal.sources.has(stood.file) ? entryLines(journal, stood) : []), subjects, all);
  const atPlace = ({ place }: Found): Subject => subjects.at(place);
  for (const rule of CLIENT_RULES) addAll(all, rule, rule.check(client, visits, journal, on), atPlace, subjects);
  const earlier: VisitReckoned[] = [];
  const desk: Desk = { journal, on, earlier, visits };
  for (const visit of visits) {
    const ofVisit = (): Subject => subjects.ofEntry(visit.visit);
    const add = (rule: Rule, found: Iterable<Found>): void => addAll(all, rule, found, ofVisit, subjects);
    askVisitRules(visit, (rule) => add(rule, rule.check(visit, desk)));
    unsettledIn(visit, desk, add);
    skinTestsIn(visit, desk, add);
    earlier.push(visit);
  }
  const late: UnplacedFinding[] = [];
  for (const rule of FINDING_RULES) addAll(late, rule, rule.check(client, all), atPlace, subjects);
  forgetRecent();
  return [...all, ...late];
};

/** What is found in a file outside its clients' entries: the file itself, shelf, stock, lines of nobody. */
export const findInSource = (source: Source, subjects: Subjects): UnplacedFinding[] => {
  const whole = wholeFile(source.path);
  const all = source.notices.map((notice) => noticed(whole, notice, subjects.ofEntry(undefined), subjects));
  const filed = new Set<Stood>(
    [...clientParts(source).values()].flatMap(({ entries, visits }) => [...entries, ...visits]),
  );
  for (const [index, stood] of source.entries.entries()) {
    if (filed.has(stood)) continue;
    inEntry(stood, () => recordLines(source, source.standing[index] as Standing), subjects, all);
  }
  return all;
};

/** What is found in what all share: salons, stylists, shelf and stock. */
export const findShared = (shared: Shared, subjects: Subjects): UnplacedFinding[] => {
  const all: UnplacedFinding[] = [];
  const atPlace = ({ place }: Found): Subject => subjects.at(place);
  for (const rule of SHELF_RULES) addAll(all, rule, rule.check(shared), atPlace, subjects);
  for (const rule of BOTH_RULES) addAll(all, rule, rule.shared(shared), atPlace, subjects);
  return all;
};

/** What is found in the hands of one day, in order of the clock, on all heads. */
export const findInDay = (hands: readonly HandOn[], subjects: Subjects): UnplacedFinding[] => {
  const all: UnplacedFinding[] = [];
  for (const rule of DAY_RULES) addAll(all, rule, rule.check(hands), ({ place }) => subjects.at(place), subjects);
  return all;
};
