import type { Namespace } from '../records/schema/values.ts';
import type { Place } from '../text/span.ts';
import { namesIn } from './named.ts';
import type { Source, Stood } from './stood.ts';

/**
 * From a name to the places that have it, for going to what is named and for giving it another name.
 *
 * Reads: files as entries. Gives: places by name. Runs again: for the entries that came or went, when it is next asked;
 * until it is asked nothing is looked through.
 */
export type NameIndex = {
  /** Puts or replaces one file; `undefined` takes it away. */
  readonly put: (path: string, source: Source | undefined) => void;
  /**
   * Where a name of one of these things stands, in order of files and lines: `product` and `held` for a product, since the
   * shelf tells what is held. A bowl is known in its visit only, which `namesIn` says.
   */
  readonly placesOf: (name: string, ...of: readonly Namespace[]) => readonly NamedPlace[];
};

/** A place with a name; `gives` where its line is what gives it. */
export type NamedPlace = Place & { readonly gives: boolean };

/** Names that mean another thing in every entry. */
const OWN: ReadonlySet<Namespace> = new Set(['bowl', 'other-bowl']);

type Names = ReadonlyMap<string, readonly NamedPlace[]>;

const keyOf = (of: Namespace, name: string): string => `${of} ${name}`;

const namesOf = (stood: Stood): Names => {
  const all = new Map<string, NamedPlace[]>();
  for (const { of, name, at, line, gives } of namesIn(stood.entry)) {
    if (OWN.has(of)) continue;
    const key = keyOf(of, name);
    const place = { in: stood, line, at, gives };
    const known = all.get(key);
    if (known === undefined) all.set(key, [place]);
    else known.push(place);
  }
  return all;
};

/** An empty index. */
export const createNameIndex = (): NameIndex => {
  const files = new Map<string, readonly Stood[]>();
  const waiting = new Map<string, Source | undefined>();
  /** Entries by the names that they have, and the names of each that was looked through. */
  const holding = new Map<string, Set<Stood>>();
  const known = new Map<Stood, Names>();

  const add = (stood: Stood): void => {
    const names = namesOf(stood);
    known.set(stood, names);
    for (const key of names.keys()) {
      const entries = holding.get(key);
      if (entries === undefined) holding.set(key, new Set([stood]));
      else entries.add(stood);
    }
  };
  const drop = (stood: Stood): void => {
    for (const key of known.get(stood)?.keys() ?? []) {
      const entries = holding.get(key);
      entries?.delete(stood);
      if (entries?.size === 0) holding.delete(key);
    }
    known.delete(stood);
  };
  const settle = (): void => {
    for (const [path, source] of waiting) {
      const now = new Set(source?.entries);
      for (const stood of files.get(path) ?? []) if (!now.has(stood)) drop(stood);
      for (const stood of now) if (!known.has(stood)) add(stood);
      if (source === undefined) files.delete(path);
      else files.set(path, source.entries);
    }
    waiting.clear();
  };
  const inOrder = (all: ReadonlySet<Stood>): Stood[] => {
    const paths = new Set([...all].map(({ file }) => file));
    return [...paths].sort().flatMap((path) => (files.get(path) ?? []).filter((stood) => all.has(stood)));
  };

  return {
    put: (path, source) => waiting.set(path, source),
    placesOf: (name, ...of) => {
      settle();
      const keys = of.map((one) => keyOf(one, name));
      const all = new Set(keys.flatMap((key) => [...(holding.get(key) ?? [])]));
      return inOrder(all).flatMap((stood) =>
        keys.flatMap((key) => known.get(stood)?.get(key) ?? []).toSorted((a, b) => a.line - b.line || a.at - b.at),
      );
    },
  };
};
