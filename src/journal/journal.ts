import type { Client, Orphan, Product, Range, Salon, Stock, Stylist, Visit } from '../records/schema/entry.ts';
import { type SalonSettings, salonSettings } from './salon.ts';
import { type ShelfItem, shelfItem } from './shelf.ts';
import type { Source, Stood } from './source.ts';

/**
 * The whole journal, with every name found.
 *
 * Reads: the entries of all files. Gives: clients with their visits in order, the shelf, the salons, what is said twice.
 * Runs again: when an entry comes, goes, moves or changes.
 */
export type Journal = {
  readonly sources: ReadonlyMap<string, Source>;
  readonly salons: ReadonlyMap<string, SalonSettings>;
  /** The only salon, the first one, or defaults when no salon entry stands. */
  readonly salon: SalonSettings;
  readonly stylists: ReadonlyMap<string, Stood<Stylist>>;
  readonly shelf: ReadonlyMap<string, ShelfItem>;
  readonly clients: ReadonlyMap<string, ClientFile>;
  /** By date, then time, then file and line. */
  readonly stocks: readonly Stood<Stock>[];
  readonly orphans: readonly Stood<Orphan>[];
  /** Visits that cannot be filed: no client, or no date. */
  readonly unfiled: readonly Stood<Visit>[];
  /** Names given to two things. */
  readonly twice: readonly SaidTwice[];
};

/** A client's entries (none while only visits name her) and visits, oldest first. */
export type ClientFile = {
  readonly name: string;
  readonly full: string;
  readonly entries: readonly Stood<Client>[];
  readonly visits: readonly Stood<Visit>[];
};

export type SaidTwice = { readonly kind: string; readonly name: string; readonly first: Stood; readonly again: Stood };

const ofKind = <K extends Stood['entry']['kind']>(
  all: readonly Stood[],
  kind: K,
): Stood<Extract<Stood['entry'], { kind: K }>>[] =>
  all.filter((stood): stood is Stood<Extract<Stood['entry'], { kind: K }>> => stood.entry.kind === kind);

const compareText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** Order of dated entries: date, time, then where they stand. */
const compareDated = (a: Stood<Visit> | Stood<Stock>, b: Stood<Visit> | Stood<Stock>): number =>
  compareText(a.entry.date?.date ?? '', b.entry.date?.date ?? '') ||
  (a.entry.time?.minutes ?? -1) - (b.entry.time?.minutes ?? -1) ||
  compareText(a.file, b.file) ||
  a.line - b.line;

const index = <
  E extends { name?: { name: string } | undefined; full?: { text: string } | undefined; kind: string },
  S extends Stood & { entry: E },
>(
  all: readonly S[],
  twice: SaidTwice[],
): Map<string, S> => {
  const found = new Map<string, S>();
  for (const stood of all) {
    const name = stood.entry.name?.name;
    if (name === undefined) continue;
    const first = found.get(name);
    if (first === undefined) found.set(name, stood);
    else twice.push({ kind: stood.entry.kind, name, first, again: stood });
  }
  return found;
};

const clientsOf = (
  entries: readonly Stood<Client>[],
  visits: readonly Stood<Visit>[],
  twice: SaidTwice[],
): Map<string, ClientFile> => {
  const drafts = new Map<string, { entries: Stood<Client>[]; visits: Stood<Visit>[] }>();
  const draft = (name: string): { entries: Stood<Client>[]; visits: Stood<Visit>[] } => {
    let one = drafts.get(name);
    if (one === undefined) {
      one = { entries: [], visits: [] };
      drafts.set(name, one);
    }
    return one;
  };
  for (const stood of entries) {
    const { name, full } = stood.entry;
    if (name === undefined) continue;
    const own = draft(name.name).entries;
    const named = own.find((other) => other.entry.full !== undefined);
    // A second entry without a full name, or with the same one, adds lines to the first.
    if (named !== undefined && full !== undefined && full.text !== named.entry.full?.text)
      twice.push({ kind: 'client', name: name.name, first: named, again: stood });
    own.push(stood);
  }
  for (const stood of visits) {
    const name = stood.entry.client?.name;
    if (name !== undefined && stood.entry.date !== undefined) draft(name).visits.push(stood);
  }
  const clients = new Map<string, ClientFile>();
  for (const [name, own] of [...drafts].sort(([a], [b]) => compareText(a, b))) {
    const full = own.entries.find(({ entry }) => entry.full !== undefined)?.entry.full?.text ?? name;
    clients.set(name, { name, full, entries: own.entries, visits: own.visits.sort(compareDated) });
  }
  return clients;
};

/** Joins the files of a journal; their order does not matter, since entries are sorted by file and line. */
export const joinSources = (sources: Iterable<Source>): Journal => {
  const byPath = new Map(
    [...sources].sort((a, b) => compareText(a.path, b.path)).map((source) => [source.path, source]),
  );
  const all = [...byPath.values()].flatMap(({ entries }) => entries);
  const twice: SaidTwice[] = [];
  const salons = index(ofKind(all, 'salon'), twice);
  const shelfEntries: (Stood<Range> | Stood<Product>)[] = all.filter(
    (stood): stood is Stood<Range> | Stood<Product> => stood.entry.kind === 'range' || stood.entry.kind === 'product',
  );
  const shelf = new Map<string, ShelfItem>();
  for (const [name, stood] of index(shelfEntries, twice)) {
    const item = shelfItem(stood);
    if (item !== undefined) shelf.set(name, item);
  }
  const visits = ofKind(all, 'visit');
  const settings = new Map([...salons].map(([name, stood]: [string, Stood<Salon>]) => [name, salonSettings(stood)]));
  return {
    sources: byPath,
    salons: settings,
    salon: settings.values().next().value ?? salonSettings(undefined),
    stylists: index(ofKind(all, 'stylist'), twice),
    shelf,
    clients: clientsOf(ofKind(all, 'client'), visits, twice),
    stocks: ofKind(all, 'stock').sort(compareDated),
    orphans: ofKind(all, 'orphan'),
    unfiled: visits.filter(({ entry }) => entry.client === undefined || entry.date === undefined),
    twice,
  };
};
