import { clientParts } from '../journal/groups.ts';
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
import { tuned } from './policy.ts';
import { holdsReason } from './reason-words.ts';
import type { Subject, Subjects } from './reasons.ts';
import { type Found, NONE, type Rule } from './rule.ts';

/**
 * Running the rules over a part of the journal: one client, one file's lines that belong to no client, or what all
 * share. Each part is found apart from the others, so that a change runs again only what it touched.
 */

const BY_NAME: ReadonlyMap<string, Rule> = new Map(RULES.map((rule) => [rule.name, rule]));

const only = <O extends Rule['over']>(over: O): Extract<Rule, { over: O }>[] =>
  RULES.filter((rule): rule is Extract<Rule, { over: O }> => rule.over === over);

const ENTRY_RULES = only('entry');
const VISIT_RULES = only('visit');
const BOTH_RULES = only('shelf and clients');
const CLIENT_RULES = [...only('client'), ...BOTH_RULES];
const FINDING_RULES = only('findings');
const JOURNAL_RULES = only('journal');
const DAY_RULES = only('day');

/** The remark of a finding's own lines that says why, in words that the rule accepts. */
const ownReason = ({ accepts }: Rule, { place, also }: Found, { remarkAt }: Subjects): string | undefined => {
  if (accepts === undefined) return undefined;
  const lines = [place, ...(also ?? []).map((one) => one.place)];
  const remarks = lines.flatMap((line) => remarkAt(line, place) ?? []);
  return remarks.find((remark) => holdsReason(remark, accepts));
};

const toFinding = (rule: Rule, found: Found, { client, reasons, salon }: Subject, own?: string): UnplacedFinding => {
  const { severity = rule.severity, caution: topic = rule.caution, ...said } = found;
  const reason = reasons.get(rule.name) ?? (severity === 'stop' ? undefined : own);
  const finding: UnplacedFinding = {
    rule: rule.name,
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

const noticed = (ground: Ground, notice: Notice, subject: Subject): UnplacedFinding =>
  // Every notice has its rule: a test holds the two lists together.
  toFinding(BY_NAME.get(notice.rule) as Rule, foundOf(ground, notice), subject);

const addAll = (
  all: UnplacedFinding[],
  rule: Rule,
  every: Iterable<Found>,
  subjectOf: (found: Found) => Subject,
  subjects: Subjects,
): void => {
  // As nearly always.
  if (every === NONE) return;
  for (const found of every) all.push(toFinding(rule, found, subjectOf(found), ownReason(rule, found, subjects)));
};

/** What the reader and the rules on single entries find in one entry. */
const inEntry = (stood: Stood, lines: () => readonly string[], subjects: Subjects, all: UnplacedFinding[]): void => {
  for (const notice of stood.notices) all.push(noticed(stood, notice, subjects.ofEntry(stood)));
  if (stood.entry.facts.length < 2) return;
  const typed = lines();
  for (const rule of ENTRY_RULES) addAll(all, rule, rule.check(stood, typed), () => subjects.ofEntry(stood), subjects);
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
    inEntry(stood, () => entryLines(journal, stood), subjects, all);
  const atPlace = ({ place }: Found): Subject => subjects.at(place);
  for (const rule of CLIENT_RULES) addAll(all, rule, rule.check(client, visits, journal, on), atPlace, subjects);
  for (const visit of visits) {
    const ofVisit = (): Subject => subjects.ofEntry(visit.visit);
    for (const rule of VISIT_RULES) addAll(all, rule, rule.check(visit, journal, on), ofVisit, subjects);
  }
  const late: UnplacedFinding[] = [];
  for (const rule of FINDING_RULES) addAll(late, rule, rule.check(client, all), atPlace, subjects);
  forgetRecent();
  return [...all, ...late];
};

/** What is found in a file outside its clients' entries: the file itself, shelf, stock, lines of nobody. */
export const findInSource = (source: Source, subjects: Subjects): UnplacedFinding[] => {
  const whole = wholeFile(source.path);
  const all = source.notices.map((notice) => noticed(whole, notice, subjects.ofEntry(undefined)));
  const filed = new Set<Stood>(
    [...clientParts(source).values()].flatMap(({ entries, visits }) => [...entries, ...visits]),
  );
  for (const [index, stood] of source.entries.entries()) {
    if (filed.has(stood)) continue;
    inEntry(stood, () => recordLines(source, source.standing[index] as Standing), subjects, all);
  }
  return all;
};

/** What is found in salons, shelf, stock and names given twice. */
export const findShared = (journal: Journal, subjects: Subjects): UnplacedFinding[] => {
  const all: UnplacedFinding[] = [];
  const atPlace = ({ place }: Found): Subject => subjects.at(place);
  for (const rule of JOURNAL_RULES) addAll(all, rule, rule.check(journal), atPlace, subjects);
  for (const rule of BOTH_RULES) addAll(all, rule, rule.shared(journal), atPlace, subjects);
  return all;
};

/** What is found in the hands of one day, in order of the clock, on all heads. */
export const findInDay = (hands: readonly HandOn[], subjects: Subjects): UnplacedFinding[] => {
  const all: UnplacedFinding[] = [];
  for (const rule of DAY_RULES) addAll(all, rule, rule.check(hands), ({ place }) => subjects.at(place), subjects);
  return all;
};
