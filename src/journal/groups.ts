import type { Client, Visit } from '../records/schema/entry.ts';
import type { Source, Stood } from './stood.ts';

/** A client's own entries in one file. */
export type ClientPart = { readonly entries: Stood<Client>[]; readonly visits: Stood<Visit>[] };

const grouped = new WeakMap<Source, ReadonlyMap<string, ClientPart>>();

/** The entries of a file by the client they are filed under; worked out once a file. */
export const clientParts = (source: Source): ReadonlyMap<string, ClientPart> => {
  const known = grouped.get(source);
  if (known !== undefined) return known;
  const parts = new Map<string, ClientPart>();
  const partOf = (name: string): ClientPart => {
    let part = parts.get(name);
    if (part === undefined) {
      part = { entries: [], visits: [] };
      parts.set(name, part);
    }
    return part;
  };
  for (const stood of source.entries) {
    if (isOf(stood, 'client')) {
      if (stood.entry.name !== undefined) partOf(stood.entry.name.name).entries.push(stood);
    } else if (isOf(stood, 'visit') && stood.entry.client !== undefined && stood.entry.date !== undefined)
      partOf(stood.entry.client.name).visits.push(stood);
  }
  grouped.set(source, parts);
  return parts;
};

/** Whether an entry is of this kind. */
export const isOf = <K extends Stood['entry']['kind']>(
  stood: Stood,
  kind: K,
): stood is Stood<Extract<Stood['entry'], { kind: K }>> => stood.entry.kind === kind;
