import { isSharedOther, wokenBy } from '../journal/asked.ts';
import type { Journal } from '../journal/journal.ts';
import { readSource, rereadSource, type Source } from '../journal/source.ts';
import { createStore, type Touched } from '../journal/store.ts';
import { createJudging, type Judged } from './judging.ts';

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

export type Settled = Judged & {
  readonly touched: Touched;
  /** Clients reckoned and checked in this settling, and those that went. */
  readonly redone: ReadonlySet<string>;
};

/** An empty session. */
export const openSession = (): Session => {
  const store = createStore();
  const sources = new Map<string, Source>();
  const judging = createJudging(store.settle().journal, undefined, true);
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
    const asks = [...judging.asks()];
    if (everything) return new Set([...asks.map(([name]) => name), ...journal.clients.keys()]);
    const redo = new Set(clients);
    const isWoken = wokenBy(changed);
    for (const [name, asked] of asks) if (isWoken(asked)) redo.add(name);
    return redo;
  };

  const settle = (on?: string): Settled => {
    const { journal, touched } = store.settle();
    const everything = touched.everything || on !== day;
    day = on;
    const { changed } = touched;
    const redone = stale(journal, touched, everything);
    judging.take(journal, on, {
      clients: redone,
      shared: everything || isSharedOther(changed) || journal.twice.length > 0,
      // A salon's own policy weighs these too.
      sources: everything || changed.salon || changed.salons.names.size > 0,
    });
    for (const name of redone) judging.foundOf(name);
    return { ...judging, journal, touched, redone };
  };

  return { put, settle };
};
