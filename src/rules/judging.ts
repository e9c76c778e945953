import { type Asked, oneForAll, watched } from '../journal/asked.ts';
import type { ClientFile, Journal } from '../journal/journal.ts';
import type { Source } from '../journal/source.ts';
import { type BowlMemo, letGo } from '../reckon/bowl/bowls.ts';
import { type ClientFault, withinClient } from '../reckon/client-fault.ts';
import type { VisitReckoned } from '../reckon/model.ts';
import { reckonClient } from '../reckon/visit.ts';
import type { Finding, UnplacedFinding } from '../text/finding.ts';
import { compareText } from '../text/fold.ts';
import { forgetRecent } from '../text/recently.ts';
import { createDays } from './days.ts';
import { findInClient, findInSource, findShared } from './find.ts';
import { type Placed, placed, placedAgain } from './placed.ts';
import { type Subjects, subjectsOf } from './reasons.ts';
import { type AllFound, reported } from './reported.ts';

/**
 * The way from a journal to what is worked out and found in it, client by client, each when she is first asked for. Every
 * command goes this way, for one client or for all; watching goes it again for those whom a change touched.
 *
 * Reads: a journal. Gives: what was reckoned, and findings. Runs again: for the clients that it is told to forget.
 */

export type Judged = {
  readonly journal: Journal;
  /** A client's visits worked out, oldest first; none where the program failed at her notes. */
  readonly reckonedOf: (client: string) => readonly VisitReckoned[];
  /** Everyone's, by name, in order of the journal, without those at whom the program failed. */
  readonly everyone: () => ReadonlyMap<string, readonly VisitReckoned[]>;
  /** Findings in the notes of one client, which are about her. */
  readonly foundOf: (client: string) => readonly Finding[];
  /**
   * Every finding about one client, whether or not it is in her notes alone, in order of report, with those that are
   * explained last. Of others those alone are judged who were there on a day of hers.
   */
  readonly about: (client: string) => readonly Finding[];
  /**
   * Findings outside what one client's notes say by themselves: in what all share, in what several clients of a day have
   * together, and in lines that are nobody's. Some are about a client too.
   */
  readonly elsewhere: () => readonly Finding[];
  /** What went wrong in the program while it worked out one client; then nothing is known of her. */
  readonly faultOf: (client: string) => Error | undefined;
  /** All such clients, by name, of those who were asked for. */
  readonly faults: () => readonly ClientFault[];
  /** Every finding. */
  readonly all: () => AllFound;
};

/** What a change leaves to be found anew. */
export type Anew = {
  /** Clients to forget, those that went among them. */
  readonly clients: Iterable<string>;
  /** What all share. */
  readonly shared: boolean;
  /** Lines that are nobody's, in files that stayed. */
  readonly sources: boolean;
};

export type Judging = Judged & {
  /** Takes in a journal that changed, and the day it is judged on. */
  readonly take: (journal: Journal, on: string | undefined, anew: Anew) => void;
  /** What each client asked of others and of what all share, of those who were worked out. */
  readonly asks: () => Iterable<readonly [client: string, asked: Asked]>;
};

/** Findings as they were found, and as they stood when they were last asked for. */
type Own = { readonly found: readonly UnplacedFinding[]; placed: Placed | undefined };

const NOTHING: Own = { found: [], placed: undefined };

/**
 * A journal to be judged. `again`: it will change and be judged again, so what each client asks is noted, and what was
 * worked out is kept. Without that a client is let go once she is judged, unless her visits were asked for.
 */
export const createJudging = (first: Journal, day: string | undefined, again: boolean): Judging => {
  let journal = first;
  let on = day;
  let subjects: Subjects = subjectsOf(journal);
  const reckoned = new Map<string, readonly VisitReckoned[]>();
  const found = new Map<string, Own>();
  const asked = new Map<string, Asked>();
  const faults = new Map<string, ClientFault>();
  const days = createDays();
  const keptOnce = oneForAll();
  let inSources = new WeakMap<Source, readonly UnplacedFinding[]>();
  let shared: readonly UnplacedFinding[] | undefined;
  /** What was found outside the notes of one client as it stood when it was last asked for. */
  let outside = new Map<readonly UnplacedFinding[], Placed>();
  let others: readonly Finding[] | undefined;
  let everything: AllFound | undefined;
  /** What bowls of one client are made again as bowls of another; of no use where what each asks is to be noted. */
  let memo: BowlMemo = new Map();

  const take: Judging['take'] = (now, today, anew) => {
    journal = now;
    on = today;
    subjects = subjectsOf(now);
    others = undefined;
    everything = undefined;
    // What was found there may be gone by a change in what it is held against.
    if (anew.shared || (shared?.length ?? 0) > 0) shared = undefined;
    if (anew.sources) inSources = new WeakMap();
    for (const name of anew.clients) {
      for (const known of [reckoned, found, asked, faults]) known.delete(name);
      if (!now.clients.has(name)) days.put(name, []);
    }
  };

  const failed = (fault: ClientFault): void => {
    faults.set(fault.client, fault);
    // What was left half done is not trusted.
    memo = new Map();
    days.put(fault.client, []);
    reckoned.set(fault.client, []);
    found.set(fault.client, NOTHING);
  };

  /** Her visits, and what is found in them where that is asked, as one step: what she asks is one list. */
  const workOut = (of: Journal, client: ClientFile, isJudged: boolean): void => {
    const { name } = client;
    const atBorder = withinClient(client, () => {
      const visits = reckoned.get(name) ?? reckonClient(of, client, again ? new Map() : memo);
      if (!isJudged) return { visits, all: undefined };
      const all = findInClient(of, of === journal ? subjects : subjectsOf(of), client, visits, on);
      days.put(name, visits);
      return { visits, all };
    });
    if ('fault' in atBorder) {
      failed(atBorder);
      return;
    }
    const { visits, all } = atBorder;
    if (again || !isJudged) reckoned.set(name, visits);
    if (all !== undefined) found.set(name, { found: all, placed: undefined });
    if (isJudged && !again) letGo(memo, client);
  };

  const ask = (name: string, isJudged: boolean): void => {
    const client = journal.clients.get(name);
    if (client === undefined || (isJudged ? found : reckoned).has(name)) return;
    if (!again) {
      workOut(journal, client, isJudged);
      return;
    }
    const own = watched(journal);
    // What was worked out for a page since was not asked by her.
    forgetRecent();
    workOut(own.journal, client, true);
    const all = own.asked();
    // Her own notes touch her anyway.
    const clients = { ...all.clients, names: all.clients.names.filter((one) => one !== name) };
    asked.set(name, keptOnce({ ...all, clients }));
  };

  const placedOf = (own: Own): readonly Finding[] => {
    own.placed = placedAgain(journal, own.found, own.placed);
    return own.placed.findings;
  };

  const foundOf = (name: string): readonly Finding[] => {
    ask(name, true);
    const own = found.get(name);
    return own === undefined || own === NOTHING ? [] : placedOf(own);
  };

  const inSource = (source: Source): readonly UnplacedFinding[] => {
    let own = inSources.get(source);
    if (own === undefined) {
      own = findInSource(source, subjects);
      inSources.set(source, own);
    }
    return own;
  };

  /** What is found outside the notes of one client, with the days of those who were worked out. */
  const outsideNow = (): readonly (readonly UnplacedFinding[])[] => {
    shared ??= findShared(journal, subjects);
    return [shared, ...days.found(subjects), ...[...journal.sources.values()].map(inSource)];
  };

  const judgeAll = (): void => {
    for (const name of journal.clients.keys()) ask(name, true);
  };

  const elsewhere = (): readonly Finding[] => {
    if (others !== undefined) return others;
    judgeAll();
    const now: typeof outside = new Map();
    for (const one of outsideNow()) if (one.length > 0) now.set(one, placedAgain(journal, one, outside.get(one)));
    outside = now;
    others = [...now.values()].flatMap(({ findings }) => findings);
    return others;
  };

  const about = (name: string): readonly Finding[] => {
    const own = foundOf(name);
    const hers = new Set(journal.clients.get(name)?.visits.map(({ entry }) => entry.date?.date));
    hers.delete(undefined);
    for (const { name: other, visits } of journal.clients.values())
      if (visits.some(({ entry }) => hers.has(entry.date?.date))) ask(other, true);
    const beside = outsideNow().flatMap((some) => some.filter(({ client }) => client === name));
    const { findings, answered } = reported([...own, ...beside.map((one) => placed(journal, one))]);
    return [...new Set([...findings, ...answered])];
  };

  return {
    get journal() {
      return journal;
    },
    take,
    asks: () => asked,
    reckonedOf: (name) => {
      ask(name, false);
      return reckoned.get(name) ?? [];
    },
    everyone: () => {
      for (const name of journal.clients.keys()) ask(name, false);
      return new Map(
        [...journal.clients.keys()].flatMap((name) => (faults.has(name) ? [] : [[name, reckoned.get(name) ?? []]])),
      );
    },
    foundOf,
    about,
    elsewhere,
    faultOf: (name) => faults.get(name)?.fault,
    faults: () => [...faults.values()].sort((a, b) => compareText(a.client, b.client)),
    all: () => {
      if (everything === undefined) {
        everything = reported([...elsewhere(), ...[...journal.clients.keys()].flatMap(foundOf)]);
        if (faults.size > 0) everything = { ...everything, faults: [...faults.values()] };
      }
      return everything;
    },
  };
};

/** A journal judged once, as it stands; `on` is the day it is judged on, without which no rule asks for today. */
export const judge = (journal: Journal, on?: string): Judged => createJudging(journal, on, false);
