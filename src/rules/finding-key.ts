import type { Journal } from '../journal/journal.ts';
import type { Stood } from '../journal/source.ts';
import { lineAt } from '../reckon/cite.ts';
import type { Fact } from '../records/schema/entry.ts';
import { clockText } from '../text/dates.ts';
import type { Place } from '../text/span.ts';
import { sliceOf } from '../text/span.ts';

/** Where a finding stands: its entry, and the fact of its line; undefined outside any, and at an entry's header. */
export type FactAt = { readonly stood: Stood | undefined; readonly fact: Fact | undefined };

/** What names an entry among those of its kind, wherever it stands: a visit by its client and day, a product by its name. */
const entryName = ({ file, entry }: Stood): string => {
  switch (entry.kind) {
    case 'visit': {
      const minutes = entry.time?.minutes;
      const time = minutes === undefined ? [] : [clockText(minutes)];
      return ['visit', entry.client?.name ?? file, entry.date?.date ?? 'no date', ...time].join(' ');
    }
    case 'stock':
      return `stock ${entry.date?.date ?? file}`;
    case 'orphan':
      return `lines of ${file}`;
    default:
      return `${entry.kind} ${entry.name?.name ?? file}`;
  }
};

/** The bowls that a line is about, in capitals. */
const bowlsOf = (fact: Fact): readonly string[] => {
  const named = [...('bowl' in fact ? [fact.bowl] : []), ...('bowls' in fact ? fact.bowls : [])];
  return named.flatMap((one) => (one === undefined ? [] : one.name.toUpperCase()));
};

const FIGURES = /\d+(?:[.,]\d+)*/gu;

/**
 * What stays the same of a finding while lines move, its figures change and its sentence is worded anew: the rule, the
 * entry by its name or day, the line by its first word and bowls, and the marked characters with figures folded. Two
 * findings have one key where a rule finds the same thing in two equal lines of one entry.
 */
export const findingKey = (rule: string, place: Place, { stood, fact }: FactAt, journal: Journal): string => {
  const marked = sliceOf(lineAt(journal, place), place.at).replace(FIGURES, '0').toLowerCase();
  const line = fact === undefined ? '' : [fact.word, ...bowlsOf(fact)].join(' ');
  return [rule, stood === undefined ? place.in.file : entryName(stood), line, marked].join(' | ');
};
