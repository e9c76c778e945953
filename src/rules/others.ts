import type { ClientFile } from '../journal/journal.ts';

const NOBODY: readonly string[] = [];

/** Other clients whose bowls are made again in this one's visits, each once. */
export const othersOf = (client: ClientFile): readonly string[] => {
  let others: Set<string> | undefined;
  for (const { entry } of client.visits)
    for (const fact of entry.facts)
      if (fact.word === 'again' && fact.from.client !== undefined) {
        others ??= new Set();
        others.add(fact.from.client.name);
      }
  return others === undefined ? NOBODY : [...others];
};

/** Which clients make bowls again of which, kept while their notes change. */
export type Remakers = {
  /** Puts whose bowls a client makes again, in place of what she made before. */
  readonly put: (client: string, others: readonly string[]) => void;
  /** Everybody who makes any other client's bowl again. */
  readonly all: () => Iterable<string>;
  /** Some clients, those who make their bowls again, those who make bowls of these again, and so on. */
  readonly from: (clients: Iterable<string>) => Set<string>;
};

/** Nobody yet. */
export const createRemakers = (): Remakers => {
  const othersBy = new Map<string, readonly string[]>();
  const remakersOf = new Map<string, Set<string>>();

  const put = (client: string, others: readonly string[]): void => {
    for (const other of othersBy.get(client) ?? NOBODY) {
      const remakers = remakersOf.get(other);
      remakers?.delete(client);
      if (remakers?.size === 0) remakersOf.delete(other);
    }
    if (others.length === 0) othersBy.delete(client);
    else othersBy.set(client, others);
    for (const other of others) {
      const remakers = remakersOf.get(other);
      if (remakers === undefined) remakersOf.set(other, new Set([client]));
      else remakers.add(client);
    }
  };

  const from = (clients: Iterable<string>): Set<string> => {
    const reached = new Set(clients);
    // What is added to a set while it is gone through is come to as well.
    for (const client of reached) for (const remaker of remakersOf.get(client) ?? NOBODY) reached.add(remaker);
    return reached;
  };

  return { put, all: () => othersBy.keys(), from };
};
