import type { Shared } from './join.ts';
import type { Journal } from './model.ts';
import { developersOf, type Outline, outlinesOf, type Shelf, type ShelfItem, sameOutlines } from './shelf.ts';

/**
 * What one reader asks of the part of a journal that all share: the one place where that is kept track of, so that a
 * change wakes whoever would be told something else now. A name asked for in vain counts as asked.
 *
 * Reads: a journal. Gives: the same journal, and what was asked of it. Runs again: for each client and page.
 */
export type Asked = {
  readonly shelf: AskedByName;
  readonly salons: AskedByName;
  readonly stylists: AskedByName;
  /** Other clients whose notes were looked at. */
  readonly clients: AskedByName;
  /** Whether the clients that an entry describes were looked through by their names. */
  readonly described: boolean;
  /** Whether the outlines of all that is on the shelf were looked through: names, kinds and strengths, no price. */
  readonly outlines: boolean;
  /** Whether the outlines of the developers were. */
  readonly developers: boolean;
  /** Whether the salon that stands for an unnamed one was asked for. */
  readonly salon: boolean;
  readonly stocks: boolean;
};

type AskedByName = {
  readonly names: readonly string[];
  /** Whether there are none, one or several. */
  readonly count: boolean;
  /** Which names there are. */
  readonly list: boolean;
  /** Everything that there is. */
  readonly all: boolean;
};

/** A table that notes what it is asked. */
class Watched<V> implements ReadonlyMap<string, V> {
  readonly #of: ReadonlyMap<string, V>;
  readonly #names = new Set<string>();
  #count = false;
  #list = false;
  #all = false;

  constructor(of: ReadonlyMap<string, V>) {
    this.#of = of;
  }

  asked(): AskedByName {
    // In an order of their own, so that who asked the same things has the same answer.
    return { names: [...this.#names].sort(), count: this.#count, list: this.#list, all: this.#all };
  }

  get(name: string): V | undefined {
    this.#names.add(name);
    return this.#of.get(name);
  }

  has(name: string): boolean {
    this.#names.add(name);
    return this.#of.has(name);
  }

  /** Whoever is worked out for one client compares it with nought or one, and nothing else. */
  get size(): number {
    this.#count = true;
    return this.#of.size;
  }

  keys(): MapIterator<string> {
    this.#list = true;
    return this.#of.keys();
  }

  values(): MapIterator<V> {
    this.#all = true;
    return this.#of.values();
  }

  entries(): MapIterator<[string, V]> {
    this.#all = true;
    return this.#of.entries();
  }

  [Symbol.iterator](): MapIterator<[string, V]> {
    return this.entries();
  }

  forEach(each: (value: V, name: string, map: ReadonlyMap<string, V>) => void): void {
    for (const [name, value] of this.entries()) each(value, name, this);
  }
}

/** The shelf, watched; its outlines can be looked through without asking for every item. */
class WatchedShelf extends Watched<ShelfItem> implements Shelf {
  readonly #shelf: Shelf;
  #outlined = false;
  #asDevelopers = false;

  constructor(shelf: Shelf) {
    super(shelf);
    this.#shelf = shelf;
  }

  get outlines(): readonly Outline[] {
    this.#outlined = true;
    return outlinesOf(this.#shelf);
  }

  get developers(): readonly Outline[] {
    this.#asDevelopers = true;
    return developersOf(this.#shelf);
  }

  looked(): Pick<Asked, 'outlines' | 'developers'> {
    return { outlines: this.#outlined, developers: this.#asDevelopers };
  }
}

/** A journal for one reader, and what she asked of it up to now. */
export const watched = (journal: Journal): { readonly journal: Journal; readonly asked: () => Asked } => {
  const shelf = new WatchedShelf(journal.shelf);
  const salons = new Watched(journal.salons);
  const stylists = new Watched(journal.stylists);
  const clients = new Watched(journal.clients);
  let described = false;
  let salon = false;
  let stocks = false;
  return {
    journal: {
      ...journal,
      shelf,
      salons,
      stylists,
      clients,
      get described() {
        described = true;
        return journal.described;
      },
      get salon() {
        salon = true;
        return journal.salon;
      },
      get stocks() {
        stocks = true;
        return journal.stocks;
      },
    },
    asked: () => ({
      shelf: shelf.asked(),
      salons: salons.asked(),
      stylists: stylists.asked(),
      clients: clients.asked(),
      described,
      ...shelf.looked(),
      salon,
      stocks,
    }),
  };
};

type ChangedNames = { readonly names: ReadonlySet<string>; readonly count: boolean; readonly list: boolean };

/** What a change made different for whoever asks. */
export type Changed = {
  readonly shelf: ChangedNames;
  readonly salons: ChangedNames;
  readonly stylists: ChangedNames;
  readonly clients: ChangedNames;
  readonly described: boolean;
  readonly outlines: boolean;
  readonly developers: boolean;
  readonly salon: boolean;
  readonly stocks: boolean;
};

const changedNames = <V>(before: ReadonlyMap<string, V>, now: ReadonlyMap<string, V>): ChangedNames => {
  const names = new Set<string>();
  for (const [name, value] of now) if (before.get(name) !== value) names.add(name);
  for (const name of before.keys()) if (!now.has(name)) names.add(name);
  const [were, are] = [[...before.keys()], [...now.keys()]];
  const count = Math.min(before.size, 2) !== Math.min(now.size, 2);
  return { names, count, list: were.length !== are.length || were.some((name, index) => name !== are[index]) };
};

const sameItems = <T>(a: readonly T[], b: readonly T[]): boolean =>
  a === b || (a.length === b.length && a.every((one, index) => one === b[index]));

/** The part of a change that is not about clients. */
export type SharedChanged = Omit<Changed, 'clients' | 'described'>;

const NONE: ChangedNames = { names: new Set(), count: false, list: false };

/** Nothing of what all share changed. */
export const NOTHING_SHARED: SharedChanged = {
  shelf: NONE,
  salons: NONE,
  stylists: NONE,
  outlines: false,
  developers: false,
  salon: false,
  stocks: false,
};

/** What changed between two states of what all share. */
export const changedBetween = (before: Shared, now: Shared): SharedChanged => ({
  shelf: changedNames(before.shelf, now.shelf),
  salons: changedNames(before.salons, now.salons),
  stylists: changedNames(before.stylists, now.stylists),
  outlines: !sameOutlines(outlinesOf(before.shelf), outlinesOf(now.shelf)),
  developers: !sameOutlines(developersOf(before.shelf), developersOf(now.shelf)),
  salon: before.salon !== now.salon,
  stocks: !sameItems(before.stocks, now.stocks),
});

const isOther = ({ names, count, list, all }: AskedByName, changed: ChangedNames): boolean =>
  (all && (changed.list || changed.names.size > 0)) ||
  (count && changed.count) ||
  (list && changed.list) ||
  (changed.names.size > 0 && names.some((name) => changed.names.has(name)));

/** Whether any of what was asked would be answered otherwise after a change. */
const isAnsweredOtherwise = (asked: Asked, changed: Changed): boolean =>
  isOther(asked.shelf, changed.shelf) ||
  isOther(asked.salons, changed.salons) ||
  isOther(asked.stylists, changed.stylists) ||
  isOther(asked.clients, changed.clients) ||
  (asked.described && changed.described) ||
  (asked.outlines && changed.outlines) ||
  (asked.developers && changed.developers) ||
  (asked.salon && changed.salon) ||
  (asked.stocks && changed.stocks);

/** Whether anything of what all share changed. */
export const isSharedOther = ({ shelf, salons, stylists, salon, stocks }: Changed): boolean =>
  salon || stocks || [shelf, salons, stylists].some(({ names, list }) => list || names.size > 0);

/** Answers that are kept as one object at most, before they are let go; whoever holds one keeps it. */
const MOST = 20_000;

/** Gives one object to all who asked the same: most of a salon's clients are worked out by the same few things. */
export const oneForAll = (): ((asked: Asked) => Asked) => {
  const known = new Map<string, Asked>();
  return (asked) => {
    const key = JSON.stringify(asked);
    const same = known.get(key);
    if (same !== undefined) return same;
    if (known.size >= MOST) known.clear();
    known.set(key, asked);
    return asked;
  };
};

/** Answers for many askers whether a change answers any of them otherwise; each asking is looked at once. */
export const wokenBy = (changed: Changed): ((asked: Asked) => boolean) => {
  const known = new Map<Asked, boolean>();
  return (asked) => {
    let isWoken = known.get(asked);
    if (isWoken === undefined) {
      isWoken = isAnsweredOtherwise(asked, changed);
      known.set(asked, isWoken);
    }
    return isWoken;
  };
};
