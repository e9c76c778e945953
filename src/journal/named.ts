import { FACT_NAMES, HEAD_NAMES, LINE_NAMES } from '../records/name-fields.ts';
import type { Entry, Fact } from '../records/schema/entry.ts';
import type { NamedField } from '../records/schema/named-fields.ts';
import type { Name, Namespace, Text, Zone } from '../records/schema/values.ts';
import type { At } from '../text/span.ts';

/**
 * The names in an entry, each with what it is of and its place: one walk for whoever asks what is named, by a table that is
 * generated from the schemas.
 *
 * Reads: a record. Gives: its names. Runs again: nothing is kept here.
 */
export type Named = {
  readonly of: Namespace;
  /** As compared; a lot as it was typed. */
  readonly name: string;
  readonly at: At;
  /** Whether the line is what gives the name, and not one that uses it. */
  readonly gives: boolean;
  /** The line of the entry, counted from its header, which is 0. */
  readonly line: number;
  /** The fact of that line; absent in a header. */
  readonly fact?: Fact;
  /** The keys to it, from the fact or the head. */
  readonly path: readonly string[];
};

type Value = Name | Zone | Text;

const textOf = (value: Value): string => {
  if ('name' in value) return value.name;
  return 'zone' in value ? value.zone : value.text;
};

/** Follows the keys of a field from `step` on; at a list, in each of it. */
const follow = (value: unknown, path: readonly string[], step: number, give: (value: Value) => void): void => {
  if (value === undefined) return;
  if (Array.isArray(value)) for (const one of value) follow(one, path, step, give);
  else if (step === path.length) give(value as Value);
  else follow((value as Readonly<Record<string, unknown>>)[path[step] as string], path, step + 1, give);
};

type Fields = { readonly heads: Readonly<Record<string, readonly NamedField[]>>; readonly facts: Fields['heads'] };

const LINE: readonly NamedField[] = LINE_NAMES;

const ALL: Fields = { heads: HEAD_NAMES, facts: FACT_NAMES };

/** The fields of one kind of name alone, since most lines have none: rules ask at every line of every visit. */
const only = (of: Namespace): Fields => {
  const few = (all: Fields['heads']): Fields['heads'] =>
    Object.fromEntries(
      Object.entries(all).flatMap(([key, fields]) => {
        const own = fields.filter((field) => field.of === of);
        return own.length === 0 ? [] : [[key, own]];
      }),
    );
  return { heads: few(HEAD_NAMES), facts: few(FACT_NAMES) };
};

const byNamespace = new Map<Namespace, Fields>();

const fieldsOf = (of: Namespace | undefined): Fields => {
  if (of === undefined) return ALL;
  const known = byNamespace.get(of) ?? only(of);
  byNamespace.set(of, known);
  return known;
};

const addNamed = (
  all: Named[],
  record: Entry | Fact,
  line: number,
  fields: readonly NamedField[] | undefined,
): void => {
  for (const { of, gives = false, path } of fields ?? [])
    follow(record, path, 0, (value) => {
      const fact = 'word' in record ? record : undefined;
      all.push({ of, name: textOf(value), at: value.at, gives, line, path, ...(fact && { fact }) });
    });
};

const isOfAny = (of: Namespace | undefined): boolean => of === undefined || LINE.some((field) => field.of === of);

const addFact = (all: Named[], fact: Fact, of: Namespace | undefined, { facts }: Fields): void => {
  if (fact.by !== undefined && isOfAny(of)) addNamed(all, fact, fact.line, LINE);
  addNamed(all, fact, fact.line, facts[fact.word]);
};

/** The names in an entry, or those of one thing only: its header’s, then line by line. */
export const namesIn = (entry: Entry, of?: Namespace): readonly Named[] => {
  const fields = fieldsOf(of);
  const all: Named[] = [];
  addNamed(all, entry, 0, fields.heads[entry.kind]);
  for (const fact of entry.facts) addFact(all, fact, of, fields);
  return all;
};

/** The names in a line of an entry, or those of one thing only. */
export const namesInFact = (fact: Fact, of?: Namespace): readonly Named[] => {
  const all: Named[] = [];
  addFact(all, fact, of, fieldsOf(of));
  return all;
};
