import type { Journal } from '../journal/journal.ts';
import { readSource, rereadSource, type Source } from '../journal/source.ts';
import { createStore, type Touched } from '../journal/store.ts';
import { type BowlMemo, letGo } from '../reckon/bowl/bowls.ts';
import { type ClientFault, withinClient } from '../reckon/client-fault.ts';
import type { VisitReckoned } from '../reckon/model.ts';
import { compareText } from '../reckon/use/period.ts';
import { reckonClient } from '../reckon/visit.ts';
import type { Finding } from '../text/finding.ts';
import { createDays } from './days.ts';
import { findInClient, findInSource, findShared } from './find.ts';
import { createRemakers, othersOf } from './others.ts';
import { subjectsOf } from './reasons.ts';
import { type AllFound, reported } from './run.ts';

/**
 * A journal kept checked while its files change. Only clients that a change touched are reckoned and checked again;
 * what comes out equals a cold check of the same bytes.
 *
 * Reads: files, as bytes. Gives: the journal, what was reckoned, findings, and whose notes changed.
 */
export type Session = {
  /** Puts or replaces a file; `undefined` takes it away. Nothing is worked out until `settle`. */
  readonly put: (path: string, bytes: Uint8Array | undefined) => void;
  /** Works out what changed since the last time. `on`: the day the check is made for. */
  readonly settle: (on?: string) => Settled;
};

export type Settled = {
  readonly journal: Journal;
  readonly touched: Touched;
  /** Clients reckoned and checked in this settling, and those that went. */
  readonly redone: ReadonlySet<string>;
  readonly reckonedOf: (client: string) => readonly VisitReckoned[];
  /** Findings in the notes of one client, which are about her. */
  readonly foundOf: (client: string) => readonly Finding[];
  /**
   * Findings outside what one client's notes say by themselves: in what all share, in what several clients of a day have
   * together, and in lines that are nobody's. Some are about a client too.
   */
  readonly elsewhere: () => readonly Finding[];
  /** What went wrong in the program while it worked out one client; then nothing is known of her. */
  readonly faultOf: (client: string) => Error | undefined;
  /** All such clients, by name. */
  readonly faults: () => readonly ClientFault[];
  /** Every finding; put together when first asked for. */
  readonly all: () => AllFound;
};

type Kept = {
  readonly reckoned: readonly VisitReckoned[];
  readonly found: readonly Finding[];
};

/** An empty session. */
export const openSession = (): Session => {
  const store = createStore();
  const sources = new Map<string, Source>();
  const kept = new Map<string, Kept>();
  let inSources = new WeakMap<Source, readonly Finding[]>();
  let shared: readonly Finding[] = [];
  const days = createDays();
  /** Clients that an entry describes. */
  const described = new Set<string>();
  const remakers = createRemakers();
  const faults = new Map<string, ClientFault>();
  let day: string | undefined;

  const put = (path: string, bytes: Uint8Array | undefined): void => {
    const before = sources.get(path);
    const now =
      bytes === undefined ? undefined : before === undefined ? readSource(path, bytes) : rereadSource(before, bytes);
    if (now === undefined) sources.delete(path);
    else sources.set(path, now);
    store.put(path, now);
  };

  /** Clients to work out anew: the touched ones, those that remake their bowls, or bowls made of these, those that a new name could be meant by. */
  const stale = (journal: Journal, touched: Touched, everything: boolean): Set<string> => {
    let renamed = false;
    for (const name of touched.clients) {
      const isDescribed = (journal.clients.get(name)?.entries.length ?? 0) > 0;
      renamed ||= isDescribed !== described.has(name);
      if (isDescribed) described.add(name);
      else described.delete(name);
    }
    if (everything) return new Set([...kept.keys(), ...journal.clients.keys()]);
    const changed = new Set(touched.clients);
    if (renamed) {
      for (const name of remakers.all()) changed.add(name);
      for (const name of kept.keys()) if ((journal.clients.get(name)?.entries.length ?? 0) === 0) changed.add(name);
    }
    return remakers.from(changed);
  };

  const settle = (on?: string): Settled => {
    const { journal, touched } = store.settle();
    const everything = touched.everything || on !== day;
    day = on;
    // A salon's own policy weighs these too.
    if (everything) inSources = new WeakMap();
    const redone = stale(journal, touched, everything);
    const subjects = subjectsOf(journal);
    let memo: BowlMemo = new Map();
    for (const name of redone) {
      faults.delete(name);
      const client = journal.clients.get(name);
      if (client === undefined) {
        kept.delete(name);
        remakers.put(name, []);
        days.put(name, []);
      } else {
        const atBorder = withinClient(client, () => {
          const reckoned = reckonClient(journal, client, memo);
          const found = findInClient(journal, subjects, client, reckoned, on);
          days.put(name, reckoned);
          return { reckoned, found };
        });
        const { reckoned, found } = 'fault' in atBorder ? { reckoned: [], found: [] } : atBorder;
        if ('fault' in atBorder) {
          faults.set(name, atBorder);
          // What was left half done is not trusted.
          days.put(name, []);
          memo = new Map();
        }
        kept.set(name, { reckoned, found });
        remakers.put(name, othersOf(client));
        letGo(memo, client);
      }
    }
    if (everything || journal.twice.length > 0 || shared.length > 0) shared = findShared(journal, subjects);
    const ofDays = days.found(subjects);
    const sourceFindings = (source: Source): readonly Finding[] => {
      let found = inSources.get(source);
      if (found === undefined) {
        found = findInSource(source, subjects);
        inSources.set(source, found);
      }
      return found;
    };
    const foundOf = (name: string): readonly Finding[] => kept.get(name)?.found ?? [];
    let outside: readonly Finding[] | undefined;
    const elsewhere = (): readonly Finding[] => {
      outside ??= [...shared, ...ofDays, ...[...journal.sources.values()].flatMap(sourceFindings)];
      return outside;
    };
    let all: AllFound | undefined;
    return {
      journal,
      touched,
      redone,
      faultOf: (name) => faults.get(name)?.fault,
      faults: () => [...faults.values()].sort((a, b) => compareText(a.client, b.client)),
      reckonedOf: (name) => kept.get(name)?.reckoned ?? [],
      foundOf,
      elsewhere,
      all: () => {
        if (all === undefined) {
          all = reported([...elsewhere(), ...[...journal.clients.keys()].flatMap(foundOf)]);
          if (faults.size > 0) all = { ...all, faults: [...faults.values()] };
        }
        return all;
      },
    };
  };

  return { put, settle };
};
