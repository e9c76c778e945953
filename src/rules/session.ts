import { type Asked, isSharedOther, oneForAll, watched, wokenBy } from '../journal/asked.ts';
import type { Journal } from '../journal/journal.ts';
import { readSource, rereadSource, type Source } from '../journal/source.ts';
import { createStore, type Touched } from '../journal/store.ts';
import { type ClientFault, withinClient } from '../reckon/client-fault.ts';
import type { VisitReckoned } from '../reckon/model.ts';
import { compareText } from '../reckon/use/period.ts';
import { reckonClient } from '../reckon/visit.ts';
import type { Finding, UnplacedFinding } from '../text/finding.ts';
import { forgetRecent } from '../text/recently.ts';
import { createDays } from './days.ts';
import { findInClient, findInSource, findShared } from './find.ts';
import { type Placed, placedAgain } from './placed.ts';
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
  readonly found: readonly UnplacedFinding[];
  /** What she asked of others and of what all share, while she was worked out. */
  readonly asked: Asked;
  /** The findings as they stood when they were last asked for. */
  placed: Placed | undefined;
};

/** An empty session. */
export const openSession = (): Session => {
  const store = createStore();
  const sources = new Map<string, Source>();
  const kept = new Map<string, Kept>();
  let inSources = new WeakMap<Source, readonly UnplacedFinding[]>();
  let shared: readonly UnplacedFinding[] = [];
  /** What was found outside the notes of one client as it stood when it was last asked for. */
  let outside = new Map<readonly UnplacedFinding[], Placed>();
  const days = createDays();
  const keptOnce = oneForAll();
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

  /** Clients to work out anew: the touched ones, and those who would be told something else now by what they asked. */
  const stale = (journal: Journal, { clients, changed }: Touched, everything: boolean): Set<string> => {
    if (everything) return new Set([...kept.keys(), ...journal.clients.keys()]);
    const redo = new Set(clients);
    const isWoken = wokenBy(changed);
    for (const [name, { asked }] of kept) if (isWoken(asked)) redo.add(name);
    return redo;
  };

  const askedOf = (name: string, asked: Asked): Asked => {
    // Her own notes touch her anyway.
    const clients = { ...asked.clients, names: asked.clients.names.filter((one) => one !== name) };
    return keptOnce({ ...asked, clients });
  };

  const settle = (on?: string): Settled => {
    const { journal, touched } = store.settle();
    const everything = touched.everything || on !== day;
    day = on;
    const { changed } = touched;
    // A salon's own policy weighs these too.
    if (everything || changed.salon || changed.salons.names.size > 0) inSources = new WeakMap();
    const redone = stale(journal, touched, everything);
    const subjects = subjectsOf(journal);
    for (const name of redone) {
      faults.delete(name);
      const client = journal.clients.get(name);
      if (client === undefined) {
        kept.delete(name);
        days.put(name, []);
      } else {
        const own = watched(journal);
        // What was worked out for a page since was not asked by her.
        forgetRecent();
        const atBorder = withinClient(client, () => {
          const reckoned = reckonClient(own.journal, client);
          const found = findInClient(own.journal, subjectsOf(own.journal), client, reckoned, on);
          days.put(name, reckoned);
          return { reckoned, found };
        });
        const { reckoned, found } = 'fault' in atBorder ? { reckoned: [], found: [] } : atBorder;
        if ('fault' in atBorder) {
          faults.set(name, atBorder);
          // What was left half done is not trusted.
          days.put(name, []);
        }
        kept.set(name, { reckoned, found, asked: askedOf(name, own.asked()), placed: undefined });
      }
    }
    if (everything || isSharedOther(changed) || journal.twice.length > 0 || shared.length > 0)
      shared = findShared(journal, subjects);
    const ofDays = days.found(subjects);
    const sourceFindings = (source: Source): readonly UnplacedFinding[] => {
      let found = inSources.get(source);
      if (found === undefined) {
        found = findInSource(source, subjects);
        inSources.set(source, found);
      }
      return found;
    };
    const foundOf = (name: string): readonly Finding[] => {
      const own = kept.get(name);
      if (own === undefined) return [];
      own.placed = placedAgain(journal, own.found, own.placed);
      return own.placed.findings;
    };
    let others: readonly Finding[] | undefined;
    const elsewhere = (): readonly Finding[] => {
      if (others !== undefined) return others;
      const now: typeof outside = new Map();
      for (const found of [shared, ...ofDays, ...[...journal.sources.values()].map(sourceFindings)])
        if (found.length > 0) now.set(found, placedAgain(journal, found, outside.get(found)));
      outside = now;
      others = [...now.values()].flatMap(({ findings }) => findings);
      return others;
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
