import type { Journal } from '../journal/journal.ts';
import type { ShelfItem } from '../journal/shelf.ts';
import { lineText } from '../journal/where.ts';
import type { Citing } from '../text/sentence.ts';
import { type Ground, type Line, type Place, spanOf } from '../text/span.ts';

/** Where a value of a fact stands in its entry; the start of its line where the value is not typed. */
export const placeOf = (stood: Ground, fact: { readonly line: number }, at = 0): Place => ({
  in: stood,
  line: fact.line,
  at,
});

/** The line that a place is on; '' when the journal has no such line. */
export const lineAt = (journal: Journal, line: Line): string => lineText(journal, line);

/** A line of the shelf as the source of a figure: `its mix line, colour.bowl:64`. */
export const citeLine = (item: ShelfItem, fact: { readonly line: number; readonly word: string }): Citing => ({
  words: [`its ${fact.word} line, `, ''],
  lines: [placeOf(item.stood, fact)],
});

/** The place of some words on the line of a place; that place when they do not stand there. */
export const wordsPlace = (journal: Journal, place: Place, words: RegExp): Place => {
  const match = words.exec(lineAt(journal, place));
  return match === null ? place : { ...place, at: spanOf(match.index, match.index + match[0].length) };
};
