import type { Client, Orphan, Product, Range, Visit } from '../records/schema/entry.ts';
import { compareText } from '../text/fold.ts';
import { type ClientPart, isOf } from './groups.ts';
import type { ClientFile, Journal, SaidTwice } from './model.ts';
import { salonSettings } from './salon.ts';
import { isShared } from './same-record.ts';
import { type ShelfItem, shelfItem } from './shelf.ts';
import type { Source, Stood } from './stood.ts';

type Dated = {
  readonly date?: { date: string } | undefined;
  readonly time?: { minutes?: number | undefined } | undefined;
};

/** Order of dated entries: date, then time; sorting leaves those of one time in the order of their files and lines. */
const compareDated = (a: Stood & { entry: Dated }, b: Stood & { entry: Dated }): number =>
  compareText(a.entry.date?.date ?? '', b.entry.date?.date ?? '') ||
  (a.entry.time?.minutes ?? -1) - (b.entry.time?.minutes ?? -1);

type Named = { readonly kind: string; readonly name?: { name: string } | undefined };

/** The first entry of each name; further ones are said twice. */
const index = <S extends Stood & { entry: Named }>(all: readonly S[], twice: SaidTwice[]): Map<string, S> => {
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

/** What every client's notes are read by: the part of a journal that is not about clients. */
export type Shared = Pick<Journal, 'salons' | 'salon' | 'stylists' | 'shelf' | 'stocks' | 'twice'>;

/** Joins salons, stylists, shelf and stock of all files. */
export const joinShared = (sources: Iterable<Source>): Shared => {
  const all: Stood[] = [];
  for (const { entries } of sources) for (const stood of entries) if (isShared(stood)) all.push(stood);
  const twice: SaidTwice[] = [];
  const salons = new Map(
    [
      ...index(
        all.filter((stood) => isOf(stood, 'salon')),
        twice,
      ),
    ].map(([name, stood]) => [name, salonSettings(stood)]),
  );
  const shelf = new Map<string, ShelfItem>();
  const items = all.filter(
    (stood): stood is Stood<Range> | Stood<Product> => isOf(stood, 'range') || isOf(stood, 'product'),
  );
  for (const [name, stood] of index(items, twice)) {
    const item = shelfItem(stood);
    if (item !== undefined) shelf.set(name, item);
  }
  return {
    salons,
    salon: salons.values().next().value ?? salonSettings(undefined),
    stylists: index(
      all.filter((stood) => isOf(stood, 'stylist')),
      twice,
    ),
    shelf,
    stocks: all.filter((stood) => isOf(stood, 'stock')).sort(compareDated),
    twice,
  };
};

/** The entry that gives a client her full name. */
const namedBy = (entries: ClientFile['entries']): Stood<Client> | undefined =>
  entries.find(({ entry }) => entry.full !== undefined);

/** One client out of her parts in all files, in order of the files' paths. */
export const joinClient = (name: string, parts: readonly ClientPart[]): ClientFile => {
  const entries: Stood<Client>[] = parts.flatMap((part) => part.entries);
  const visits: Stood<Visit>[] = parts.flatMap((part) => part.visits).sort(compareDated);
  return { name, full: namedBy(entries)?.entry.full?.text ?? name, entries, visits };
};

/** Entries that give a client another full name; one without a full name, or with the same one, adds lines to the first. */
export const clientTwice = ({ name, full, entries }: ClientFile): readonly SaidTwice[] => {
  const first = namedBy(entries);
  if (first === undefined) return [];
  return entries
    .filter(({ entry }) => entry.full !== undefined && entry.full.text !== full)
    .map((again) => ({ kind: 'client', name, first, again }));
};

/** Lines of a file that belong to nobody, and visits that cannot be filed. */
export const strays = (source: Source): { orphans: Stood<Orphan>[]; unfiled: Stood<Visit>[] } => ({
  orphans: source.entries.filter((stood) => isOf(stood, 'orphan')),
  unfiled: source.entries
    .filter((stood) => isOf(stood, 'visit'))
    .filter(({ entry }) => entry.client === undefined || entry.date === undefined),
});
