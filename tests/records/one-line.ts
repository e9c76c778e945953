import { expect } from 'vitest';
import { readSource } from '../../src/journal/source.ts';
import type { Notice } from '../../src/records/notice.ts';
import type { Fact } from '../../src/records/schema/entry.ts';
import { clockText } from '../../src/text/dates.ts';
import { sliceOf } from '../../src/text/span.ts';

const HEADS = {
  salon: 'salon harbour',
  range: 'range cream "Larkfield cream" permanent',
  product: 'product clay "Peregrine clay" lightener',
  stock: 'stock 2026-08-01',
  client: 'client wren-abbott',
  visit: 'visit 2026-09-04 wren-abbott',
} as const;

export type Under = keyof typeof HEADS;

type Fields = { readonly [key: string]: unknown };

const is = (value: Fields, ...keys: readonly string[]): boolean => keys.every((key) => key in value);

const clock = ({ minutes, after, other }: Fields): string => {
  if (typeof after === 'number') return `+${after}`;
  const [first, second] = [minutes, other].map((minute) =>
    typeof minute === 'number' ? clockText(minute) : undefined,
  );
  return second === undefined ? String(first) : `${first}|${second}`;
};

/** A value of a record in the words of the notation; a value of several fields keeps those that say something. */
const brief = (value: unknown): unknown => {
  if (Array.isArray(value)) return value.map(brief);
  if (value === null || typeof value !== 'object') return value;
  const { about, ...all } = value as Fields;
  // On a `reorder` line `at` is an amount.
  const { at, ...placed } = all;
  const fields = typeof at === 'number' ? placed : all;
  const hedge = about === true ? '~' : '';
  if (is(fields, 'colour', 'developer'))
    return `${hedge}${fields.colour}:${fields.developer}${'to' in fields ? `-${fields.to}` : ''}`;
  if (typeof at === 'number' && (is(fields, 'minutes') || is(fields, 'after'))) return hedge + clock(fields);
  if (is(fields, 'value'))
    return `${hedge}${fields.value}${'to' in fields ? `-${fields.to}` : ''}${fields.unit ?? ''}${'plus' in fields ? '+' : ''}`;
  if (typeof fields.shade === 'string' && typeof at === 'number') return fields.shade;
  if (is(fields, 'stage') && typeof at === 'number' && typeof fields.stage === 'string')
    return `${hedge}${fields.stage}${'to' in fields ? ` to ${fields.to}` : ''}`;
  if (is(fields, 'from', 'to') && typeof at === 'number') return `${brief(fields.from)}-${brief(fields.to)}`;
  const said = Object.entries(fields).filter(
    ([, inner]) => inner !== false && inner !== '' && !(Array.isArray(inner) && inner.length === 0),
  );
  const [only] = said;
  if (typeof at === 'number' && said.length === 1 && only !== undefined && !Array.isArray(only[1]))
    return typeof only[1] === 'string' ? hedge + only[1] : brief(only[1]);
  return Object.fromEntries(said.map(([key, inner]) => [key, brief(inner)]));
};

const read = (line: string, under: Under) => {
  const { entries } = readSource('notes.bowl', Buffer.from(`${HEADS[under]}\n${line}`));
  return {
    facts: entries.flatMap(({ entry }): Fact[] => [...entry.facts]),
    notices: entries.flatMap(({ notices }) => notices),
  };
};

/** The facts that a line says under a header, in short. */
export const factsOf = (line: string, under: Under = 'visit'): unknown[] =>
  read(line, under).facts.map(({ line: _line, ...fact }) => brief(fact));

/** What is told of a line, each with the characters it points to. */
export const toldOf = (line: string, under: Under = 'visit'): (Notice & { readonly typed: string })[] =>
  read(line, under).notices.map((notice) => ({ ...notice, typed: sliceOf(line, notice.at) }));

/** The same as `rule: characters`. */
export const spotsOf = (line: string, under: Under = 'visit'): string[] =>
  toldOf(line, under).map(({ rule, typed }) => `${rule}: ${typed}`);

/** The header that a line is, in short. */
export const headOf = (line: string): unknown => {
  const [first] = readSource('notes.bowl', Buffer.from(line)).entries;
  if (first === undefined) return undefined;
  const { facts: _facts, ...head } = first.entry;
  return brief(head);
};

/** Expects a line to say these facts of its own first word, and nothing to be told of it. */
export const expectSaid = (line: string, said: readonly object[], under: Under = 'visit'): void => {
  const word = line.split(/[ :]/)[0]?.toLowerCase();
  expect(factsOf(line, under)).toEqual(said.map((fields) => ({ word, ...fields })));
  expect(spotsOf(line, under)).toEqual([]);
};
