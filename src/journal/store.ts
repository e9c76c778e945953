import { compareText } from '../text/fold.ts';
import { type Changed, changedBetween, NOTHING_SHARED } from './asked.ts';
import { clientParts } from './groups.ts';
import { joinClient, joinShared, type Shared, strays } from './join.ts';
import type { ClientFile, Described, Journal } from './model.ts';
import { isShared } from './same-record.ts';
import type { Source, Stood } from './stood.ts';

/**
 * The journal while files come, change and go. Check, watch and the editor all use it; a cold run is one where every
 * file comes new.
 *
 * Reads: files as entries. Gives: the joined journal, and whose notes the change touched. Work is in proportion to the
 * files put since the last `settle`; nothing is copied, so a journal's tables are those of the newest settling.
 */
export type Store = {
  /** Puts or replaces one file; `undefined` takes it away. */
  readonly put: (path: string, source: Source | undefined) => void;
  /** Joins what was put since the last time. */
  readonly settle: () => Settled;
};

export type Settled = { readonly journal: Journal; readonly touched: Touched };

/** What a change touched. `everything`: nothing was joined before. */
export type Touched = {
  readonly everything: boolean;
  /** What would be answered otherwise than before. */
  readonly changed: Changed;
  /** Clients whose entries or visits came, went or changed, or stand in another order. */
  readonly clients: ReadonlySet<string>;
  readonly files: ReadonlySet<string>;
};

const sameList = (a: readonly Stood[], b: readonly Stood[]): boolean =>
  a.length === b.length && a.every((stood, index) => stood === b[index]);

const sorted = <V>(map: ReadonlyMap<string, V>): Map<string, V> =>
  new Map([...map].sort(([a], [b]) => compareText(a, b)));

/** An empty store. */
export const createStore = (): Store => {
  let sources = new Map<string, Source>();
  /** The paths in which a client has entries. */
  const paths = new Map<string, Set<string>>();
  let clients = new Map<string, ClientFile>();
  let shared: Shared | undefined;
  let settled: Journal | undefined;
  let described: readonly Described[] = [];
  let waiting = new Map<string, Source | undefined>();

  const put = (path: string, source: Source | undefined): void => {
    waiting.set(path, source);
  };

  /** Takes in what was put, so that until then a journal is what it was; gives the files that changed, as they were. */
  const takeIn = (): ReadonlyMap<string, Source | undefined> => {
    const old = new Map<string, Source | undefined>();
    let unsorted = false;
    for (const [path, source] of waiting) {
      const before = sources.get(path);
      if (before === source) continue;
      old.set(path, before);
      // A map keeps the place of a path that is set again, so only a new one needs sorting.
      unsorted ||= before === undefined;
      if (source === undefined) sources.delete(path);
      else sources.set(path, source);
    }
    waiting = new Map();
    if (unsorted) sources = sorted(sources);
    return old;
  };

  /** Clients of a changed file whose entries are not the very same ones in the same order as before. */
  const moved = (before: Source | undefined, now: Source | undefined, path: string): string[] => {
    const [was, is] = [before && clientParts(before), now && clientParts(now)];
    const names = new Set([...(was?.keys() ?? []), ...(is?.keys() ?? [])]);
    const changed: string[] = [];
    for (const name of names) {
      const [a, b] = [was?.get(name), is?.get(name)];
      const own = paths.get(name) ?? new Set<string>();
      if (b === undefined) own.delete(path);
      else own.add(path);
      if (own.size === 0) paths.delete(name);
      else paths.set(name, own);
      if (a === undefined || b === undefined || !sameList(a.entries, b.entries) || !sameList(a.visits, b.visits))
        changed.push(name);
    }
    return changed;
  };

  /** Joins a client anew; gives whether a name came or went. */
  const rejoin = (name: string): boolean => {
    const own = paths.get(name);
    const known = clients.has(name);
    if (own === undefined) {
      clients.delete(name);
      return known;
    }
    const parts = [...own].sort(compareText).flatMap((path) => {
      const source = sources.get(path);
      const part = source && clientParts(source).get(name);
      return part === undefined ? [] : [part];
    });
    clients.set(name, joinClient(name, parts));
    return !known;
  };

  const settle = (): Settled => {
    const old = takeIn();
    const files = new Set(old.keys());
    const touched = new Set<string>();
    const everything = settled === undefined;
    let sharedTouched = everything;
    let astray = settled === undefined;
    for (const [path, before] of old) {
      const now = sources.get(path);
      for (const name of moved(before, now, path)) touched.add(name);
      const [was, is] = [before?.entries ?? [], now?.entries ?? []];
      sharedTouched ||= !sameList(was, is) && !sameList(was.filter(isShared), is.filter(isShared));
      astray ||= hasStrays(before) || hasStrays(now);
    }
    let [isNew, isOtherList] = [false, false];
    let isOtherName = false;
    for (const name of touched) {
      const before = clients.get(name);
      const [were, had] = [describedAs(before), before !== undefined];
      const isListed = rejoin(name);
      isOtherList ||= isListed;
      isNew ||= isListed && !had;
      isOtherName ||= were !== describedAs(clients.get(name));
    }
    if (isNew) clients = sorted(clients);
    if (isOtherName) described = describedIn(clients);
    const before = shared;
    if (sharedTouched || shared === undefined) shared = joinShared(sources.values());
    const changed: Changed = {
      ...(before === undefined || before === shared ? NOTHING_SHARED : changedBetween(before, shared)),
      clients: { names: touched, count: isOtherList, list: isOtherList },
      described: isOtherName,
    };
    const lost = astray || settled === undefined ? [...sources.values()].map(strays) : undefined;
    const journal: Journal = {
      sources,
      ...shared,
      clients,
      described,
      orphans: lost?.flatMap(({ orphans }) => orphans) ?? settled?.orphans ?? [],
      unfiled: lost?.flatMap(({ unfiled }) => unfiled) ?? settled?.unfiled ?? [],
    };
    settled = journal;
    return { journal, touched: { everything, changed, clients: touched, files } };
  };

  return { put, settle };
};

/** The names that an entry gives a client; undefined for one that no entry describes. */
const describedAs = (client: ClientFile | undefined): string | undefined =>
  client === undefined || client.entries.length === 0 ? undefined : client.full;

const describedIn = (clients: ReadonlyMap<string, ClientFile>): Described[] =>
  [...clients.values()].filter(({ entries }) => entries.length > 0).map(({ name, full }) => ({ name, full }));

/** Whether a file holds lines of nobody or visits that cannot be filed. */
const hasStrays = (source: Source | undefined): boolean => {
  if (source === undefined) return false;
  const { orphans, unfiled } = strays(source);
  return orphans.length + unfiled.length > 0;
};
