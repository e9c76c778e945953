import type { Shared } from '../journal/join.ts';
import type { ClientFile, Described, Journal } from '../journal/journal.ts';
import { type Named, namesIn } from '../journal/named.ts';
import type { Stood } from '../journal/source.ts';
import { placeOf } from '../reckon/cite.ts';
import type { Product, Range, Stock, Visit } from '../records/schema/entry.ts';
import { nearNames } from '../text/near.ts';
import { joinSpans } from '../text/span.ts';
import { KINDS } from '../trade/kinds.ts';
import { nearMend } from './problems.ts';
import type { Found } from './rule.ts';

/** What a name should have been the name of, and what is known by such names. */
type Sought = { readonly what: string; readonly known: Iterable<string>; readonly header: string };

const HEAD = { line: 0 };

/** Clients with an entry whose names are near to the one a visit gives, where that one has none. */
export const nearClients = (client: ClientFile, journal: Journal): readonly string[] => {
  if (client.entries.length > 0) return [];
  const meant = client.visits.map(({ entry }) => clientMeant(entry, journal)).find((one) => one !== undefined);
  return meant === undefined ? nearNames(client.name, namedClients(journal)) : [meant.name];
};

const hyphened = (words: string): string =>
  words
    .trim()
    .toLowerCase()
    .split(/[\s-]+/u)
    .join('-');

/** The clients that an entry describes. */
type Names = {
  readonly names: readonly string[];
  /** By their short names and their full ones, hyphened. */
  readonly bySpelling: ReadonlyMap<string, Described>;
};

// Asked of every visit while the clients stay the same.
const known = new WeakMap<Journal['described'], Names>();

const described = ({ described: clients }: Journal): Names => {
  let all = known.get(clients);
  if (all === undefined) {
    const of = (name: (client: Described) => string): [string, Described][] =>
      clients.toReversed().map((client) => [name(client), client]);
    const names = clients.map(({ name }) => name);
    all = { names, bySpelling: new Map([...of(({ full }) => hyphened(full)), ...of(({ name }) => name)]) };
    known.set(clients, all);
  }
  return all;
};

const namedClients = (journal: Journal): readonly string[] => described(journal).names;

/** The client whose short or full name a visit gives in words of its own (`Marlo Fenwick`). */
const clientMeant = ({ client, more = [] }: Visit, journal: Journal): Described | undefined =>
  client && described(journal).bySpelling.get(hyphened([client, ...more].map(({ name }) => name).join(' ')));

/** What is wrong with the client that a visit names; nothing where an entry describes her. */
const unknownClient = (visit: Stood<Visit>, known: ClientFile, journal: Journal): Found | undefined => {
  const { client, more = [] } = visit.entry;
  const last = more.at(-1);
  if (client === undefined || (last === undefined && known.entries.length > 0 && known.name === client.name))
    return undefined;
  const expected = 'Tests, holds and cautions are looked for under the client’s own entry.';
  const place = placeOf(visit, HEAD, last === undefined ? client.at : joinSpans(client.at, last.at));
  const meant = clientMeant(visit.entry, journal);
  if (meant?.name === known.name) return undefined;
  if (meant !== undefined) {
    const names = [client, ...more].map(({ name }) => name).join(' ');
    return {
      place,
      message: `No client of the journal is named \`${names}\`.`,
      expected,
      todo: `Write \`${meant.name}\` (${meant.full}).`,
      ...nearMend(place, [meant.name]),
    };
  }
  if (last !== undefined && (known.entries.length > 0 || nearNames(client.name, namedClients(journal)).length > 0)) {
    const rest = more.map(({ name }) => name).join(' ');
    return {
      place,
      message: `\`${rest}\` follows the client \`${client.name}\`, and a visit is of one client.`,
      todo: 'Put it in quotation marks to keep it as a remark.',
    };
  }
  const key = [client, ...more].map(({ name }) => name).join('-');
  const whole = { name: key, at: place.at, line: 0 };
  const sought = { what: 'client', known: namedClients(journal), header: 'client NAME' };
  return { ...found(visit, whole, sought), expected };
};

const found = (stood: Stood, name: Pick<Named, 'name' | 'at' | 'line'>, { what, known, header }: Sought): Found => {
  const near = nearNames(name.name, known);
  const place = placeOf(stood, name, name.at);
  const entry = `an entry \`${header.replace('NAME', name.name)}\``;
  return {
    place,
    message: `No ${what} of the journal is named \`${name.name}\`.`,
    todo: near.length === 0 ? `Write ${entry}.` : `Write \`${near.join('` or `')}\`, or ${entry}.`,
    ...nearMend(place, near),
  };
};

const product = (shared: Shared, also: readonly string[]): Sought => ({
  what: 'product',
  known: [...shared.shelf.keys(), ...also],
  header: 'product NAME',
});

/** Words that may stand in the place of a product, by the first word of the line. */
const ALSO: Readonly<Record<string, readonly string[]>> = {
  test: KINDS,
  hold: [...KINDS, 'oxidative', 'dye', 'all'],
  home: [...KINDS, 'water'],
};

/** Lines of mixes: the reckoning of bowls knows what they name. */
const MIXED: ReadonlySet<string | undefined> = new Set(['bowl', 'plus', 'weighed']);

const isInMix = ({ fact, path }: Named): boolean =>
  MIXED.has(fact?.word) || path.includes('mix') || path.includes('blend');

const addProducts = (stood: Stood, shared: Shared, all: Found[]): void => {
  // Without any shelf a name stands for itself, as it does in a bowl.
  if (shared.shelf.size === 0) return;
  for (const of of ['product', 'held'] as const)
    for (const named of namesIn(stood.entry, of)) {
      const also = ALSO[named.fact?.word ?? ''] ?? [];
      if (named.gives || isInMix(named) || shared.shelf.has(named.name) || also.includes(named.name)) continue;
      all.push(found(stood, named, product(shared, also)));
    }
};

const addSalon = (stood: Stood<Visit> | Stood<Stock>, { salons }: Shared, all: Found[]): void => {
  // Without any salon entry there is nothing that the name could be a slip of.
  if (salons.size === 0) return;
  for (const salon of namesIn(stood.entry, 'salon'))
    if (!salons.has(salon.name))
      all.push(found(stood, salon, { what: 'salon', known: salons.keys(), header: 'salon NAME' }));
};

const addStylists = (visit: Stood<Visit>, { stylists }: Shared, all: Found[]): void => {
  if (stylists.size === 0) return;
  const said = new Set<string>();
  for (const by of namesIn(visit.entry, 'stylist')) {
    // A share of money has a rule of its own.
    if (by.path[0] !== 'by' || stylists.has(by.name) || said.has(by.name)) continue;
    said.add(by.name);
    all.push(found(visit, by, { what: 'stylist', known: stylists.keys(), header: 'stylist NAME' }));
  }
};

/** Names on the shelf and in stock lines that nothing has. */
export const unknownOnShelf = (shared: Shared): readonly Found[] => {
  const all: Found[] = [];
  for (const { stood } of shared.shelf.values()) addProducts(stood as Stood<Range | Product>, shared, all);
  for (const stood of shared.stocks) {
    addProducts(stood, shared, all);
    addSalon(stood, shared, all);
  }
  return all;
};

/** Names in a client's own entries that nothing has. */
export const unknownInClient = (client: ClientFile, shared: Shared): readonly Found[] => {
  const all: Found[] = [];
  for (const stood of client.entries) addProducts(stood, shared, all);
  return all;
};

/** Names in a visit that nothing has, bowls apart: the reckoning finds those. */
export const unknownInVisit = (visit: Stood<Visit>, client: ClientFile, journal: Journal): readonly Found[] => {
  const stranger = unknownClient(visit, client, journal);
  const all = stranger === undefined ? [] : [stranger];
  addSalon(visit, journal, all);
  addStylists(visit, journal, all);
  addProducts(visit, journal, all);
  return all;
};
