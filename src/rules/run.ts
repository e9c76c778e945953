import type { Journal } from '../journal/journal.ts';
import { type BowlMemo, letGo } from '../reckon/bowl/bowls.ts';
import { type ClientFault, withinClient } from '../reckon/client-fault.ts';
import { reckonClient } from '../reckon/visit.ts';
import { compareFindings, type Finding, type UnplacedFinding } from '../text/finding.ts';
import { createDays } from './days.ts';
import { findInClient, findInSource, findShared } from './find.ts';
import { placed } from './placed.ts';
import { subjectsOf } from './reasons.ts';
import type { Reckoned } from './rule.ts';

/**
 * What the compiler found, in order of report. A finding with a reason leaves `findings` for `answered`; an answered `stop`
 * stands in both, with its reason, and no longer counts against the notes.
 */
export type AllFound = {
  readonly findings: readonly Finding[];
  readonly answered: readonly Finding[];
  /** Clients whose notes the program could not work out; nothing is said of them. */
  readonly faults?: readonly ClientFault[];
};

/** Sorts findings into those to report and those that a `because` line explains. */
export const reported = (all: Finding[]): AllFound => {
  all.sort(compareFindings);
  return {
    findings: all.filter(({ reason, severity }) => reason === undefined || severity === 'stop'),
    answered: all.filter(({ reason }) => reason !== undefined),
  };
};

/**
 * Runs every rule over a whole journal; `on` is the day the check is made for, without which no rule asks for today.
 *
 * Reads: the notices of the reader, the journal, everything reckoned. Where that is not given it is worked out here,
 * client by client, and let go at once; a client whom it is given without could not be worked out, and is not judged.
 * Gives: findings.
 */
export const findAll = (journal: Journal, reckoned?: Reckoned, on?: string): AllFound => {
  const subjects = subjectsOf(journal);
  const all: Finding[] = [];
  // One by one: a file may have more findings than a call takes arguments.
  const add = (found: readonly UnplacedFinding[]): void => {
    for (const one of found) all.push(placed(journal, one));
  };
  add(findShared(journal, subjects));
  for (const source of journal.sources.values()) add(findInSource(source, subjects));
  const days = createDays();
  const faults: ClientFault[] = [];
  let memo: BowlMemo = new Map();
  for (const client of journal.clients.values()) {
    const given = reckoned?.get(client.name);
    if (reckoned !== undefined && given === undefined) continue;
    const atBorder = withinClient(client, () => {
      const visits = given ?? reckonClient(journal, client, memo);
      const found = findInClient(journal, subjects, client, visits, on);
      days.put(client.name, visits);
      return { found };
    });
    if ('fault' in atBorder) {
      faults.push(atBorder);
      // What was left half done is not trusted.
      memo = new Map();
    } else add(atBorder.found);
    letGo(memo, client);
  }
  for (const ofDay of days.found(subjects)) add(ofDay);
  return faults.length === 0 ? reported(all) : { ...reported(all), faults };
};

/** Whether a finding counts against the notes: a `stop` or a `fix` that no `because` line explains. */
export const counts = ({ severity, reason }: Finding): boolean => severity !== 'mind' && reason === undefined;
