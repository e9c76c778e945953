import type { Journal } from './model.ts';
import type { Source } from './stood.ts';
import { createStore } from './store.ts';

export type { ClientFile, Described, Journal, SaidTwice } from './model.ts';

/** Joins the files of a journal. Their order does not matter: files are sorted by path, entries by where they stand. */
export const joinSources = (sources: Iterable<Source>): Journal => {
  const store = createStore();
  for (const source of sources) store.put(source.path, source);
  return store.settle().journal;
};
