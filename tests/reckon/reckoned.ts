import type { VisitReckoned } from '../../src/reckon/model.ts';
import { reckonAll } from '../../src/reckon/visit.ts';
import { SHELF } from './bowls-of.ts';
import { journalOf } from './journal-of.ts';

/** The tests' shelf with a filler and a direct dye beside. */
export const WIDE_SHELF = `${SHELF}
range fill filler
  mix none
  shades gold
  pack 60 g 6.20
range neon semi
  mix none
  shades teal
product goods-a goods
  pack 1 each 14.50
product spray temporary
  mix none
  pack 100 ml 5.00
product odd lightener
  mix none
  pack 0 g 5.00
`;

/** Every visit of a client worked out, oldest first, from notes under the wide shelf. */
export const reckonedOf = (notes: string, client = 'wren-abbott'): VisitReckoned[] =>
  reckonAll(journalOf(`salon harbour\n  money GBP\n${WIDE_SHELF}\n${notes}`)).get(client) ?? [];

/** The last of a client's visits worked out. */
export const lastOf = (notes: string): VisitReckoned => {
  const last = reckonedOf(notes).at(-1);
  if (last === undefined) throw new Error('the notes hold no visit');
  return last;
};
