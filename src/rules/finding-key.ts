import { entryIdentity, factIdentity } from '../journal/identity.ts';
import type { Journal } from '../journal/journal.ts';
import type { Stood } from '../journal/source.ts';
import { lineAt } from '../reckon/cite.ts';
import type { Fact } from '../records/schema/entry.ts';
import type { Place } from '../text/span.ts';
import { sliceOf } from '../text/span.ts';

/** Where a finding stands: its entry, and the fact of its line; undefined outside any, and at an entry's header. */
export type FactAt = { readonly stood: Stood | undefined; readonly fact: Fact | undefined };

const FIGURES = /\d+(?:[.,]\d+)*/gu;

/**
 * What stays the same of a finding while lines move, its figures change and its sentence is worded anew: the rule, the
 * entry by its name or day, the line by its first word, bowls and places, and the marked characters with figures folded. Two
 * findings have one key where a rule finds the same thing in two equal lines of one entry.
 */
export const findingKey = (rule: string, place: Place, { stood, fact }: FactAt, journal: Journal): string => {
  const marked = sliceOf(lineAt(journal, place), place.at).replace(FIGURES, '0').toLowerCase();
  const line = fact === undefined ? '' : factIdentity(fact);
  return [rule, stood === undefined ? place.in.file : entryIdentity(stood), line, marked].join(' | ');
};
