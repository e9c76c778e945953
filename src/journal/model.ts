import type { Client, Orphan, Stock, Stylist, Visit } from '../records/schema/entry.ts';
import type { SalonSettings } from './salon.ts';
import type { Shelf } from './shelf.ts';
import type { Source, Stood } from './stood.ts';

/**
 * The whole journal, with every name found.
 *
 * Reads: the entries of all files. Gives: clients with their visits in order, the shelf, the salons, what is said twice.
 * Runs again: when an entry comes, goes or changes. Its tables go on with the notes: whoever wants to compare keeps what
 * she compares.
 */
export type Journal = {
  /** By path, in order. */
  readonly sources: ReadonlyMap<string, Source>;
  readonly salons: ReadonlyMap<string, SalonSettings>;
  /** The only salon, the first one, or defaults when no salon entry stands. */
  readonly salon: SalonSettings;
  readonly stylists: ReadonlyMap<string, Stood<Stylist>>;
  readonly shelf: Shelf;
  /** By name, in order. */
  readonly clients: ReadonlyMap<string, ClientFile>;
  /** Those of the clients that an entry describes, by name; the same array while none came, went or changed its name. */
  readonly described: readonly Described[];
  /** By date, then time, then file and line. */
  readonly stocks: readonly Stood<Stock>[];
  readonly orphans: readonly Stood<Orphan>[];
  /** Visits that cannot be filed: no client, or no date. */
  readonly unfiled: readonly Stood<Visit>[];
  /** Names given to two things of shelf and salon; of clients, `clientTwice` says it. */
  readonly twice: readonly SaidTwice[];
};

/** A client that an entry describes, by her short name and her full one. */
export type Described = Pick<ClientFile, 'name' | 'full'>;

/** A client's entries (none while only visits name her) and visits, oldest first. */
export type ClientFile = {
  readonly name: string;
  readonly full: string;
  readonly entries: readonly Stood<Client>[];
  readonly visits: readonly Stood<Visit>[];
};

export type SaidTwice = { readonly kind: string; readonly name: string; readonly first: Stood; readonly again: Stood };
