import { BODY_WORDS, isBodyWord } from '../notation/words.ts';
import { type BodyFact, PRINTERS } from './print/body.ts';
import { printNamed, printProduct, printRange, printStock, printStylist, printVisit } from './print/headers.ts';
import { closing } from './print/quoted.ts';
import { type Said, type SaidHead, spaced } from './print/said.ts';
import { withRest } from './print/unread-rest.ts';
import type { Entry, Fact } from './schema/entry.ts';

/**
 * Records as lines: the inverse of reading. What is printed reads as what the record says, and is laid out as `neaten`
 * lays it out.
 *
 * Reads: a record, with places or without. Gives: lines of the notation. What was not read stands as it was typed. A visit or
 * a stock without its day has no header that opens one, and is printed without it.
 */

type Printer = (record: object) => string;

/** Words whose line is text to its end: the printer of the word closes it too. */
const isFree = (word: BodyFact): boolean => isBodyWord(word) && BODY_WORDS[word].form === 'free';

/**
 * A fact as a line, without indentation. What of its line was not read is put where it again is not read; where it would
 * be read at any place, it is kept in the remark, since what nobody reckoned with must not come to count.
 */
export const printFact = (fact: Said<Fact>): string => {
  if (fact.word === 'unread') return fact.typed;
  const { word, rest, says } = fact;
  const said = spaced(word, (PRINTERS[word] as Printer)(fact));
  const close = isFree(word) ? '' : closing(fact);
  if (rest === undefined) return spaced(said, close);
  const kept = spaced(says?.text, rest.text);
  return withRest(fact, rest.text, said, close) ?? spaced(said, closing({ ...fact, says: { text: kept } }));
};

/** Every entry that a header opens. */
type Headed = Exclude<Entry, { kind: 'orphan' }>;

const HEADS: { readonly [K in Headed['kind']]: (head: SaidHead<K>) => string } = {
  salon: printNamed,
  stylist: printStylist,
  range: printRange,
  product: printProduct,
  stock: printStock,
  client: printNamed,
  visit: printVisit,
};

/** The header of an entry as a line. */
export const printHead = (entry: Said<Headed>): string => spaced(entry.kind, (HEADS[entry.kind] as Printer)(entry));

/** The line that opens an entry; lines that belong to nobody have the one that was typed, or none. */
const opening = (entry: Said<Entry>): readonly string[] => {
  if (entry.kind !== 'orphan') return [printHead(entry)];
  return entry.header === undefined ? [] : [entry.header.text];
};

/** The marker lines of a merge conflict stand at the margin, where alone they are such. */
const CONFLICT = /^(?:<{7}|={7}|>{7})/;

const bodyLine = (fact: Said<Fact>): string => {
  const line = printFact(fact);
  return line === '' || (fact.word === 'unread' && CONFLICT.test(line)) ? line : `  ${line}`;
};

/** An entry as lines: its header at the margin, its facts two spaces in, each on a line of its own. */
export const printEntry = (entry: Said<Entry>): string[] => [...opening(entry), ...entry.facts.map(bodyLine)];
