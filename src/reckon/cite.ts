import type { Journal } from '../journal/journal.ts';
import type { ShelfItem } from '../journal/shelf.ts';
import type { Stood } from '../journal/source.ts';
import { type Place, spanOf } from '../text/span.ts';

/** Where a value of a fact stands in its file; the start of its line where the value is not typed. */
export const placeOf = (stood: Pick<Stood, 'file' | 'line'>, fact: { readonly line: number }, at = 0): Place => ({
  file: stood.file,
  line: stood.line + fact.line,
  at,
});

/** The line that a place is on; '' when the journal has no such line. */
export const lineAt = ({ sources }: Journal, { file, line }: Omit<Place, 'at'>): string =>
  sources.get(file)?.lines[line] ?? '';

/** The file's own name and the line, as an editor counts it: `colour.bowl:64`. */
export const lineName = (file: string, line: number): string =>
  `${file.slice(Math.max(file.lastIndexOf('/'), file.lastIndexOf('\\')) + 1)}:${line + 1}`;

/** A line of the shelf as the source of a figure: `its mix line, colour.bowl:64`. */
export const citeLine = (item: ShelfItem, fact: { readonly line: number; readonly word: string }): string =>
  `its ${fact.word} line, ${lineName(item.stood.file, item.stood.line + fact.line)}`;

/** The place of some words on the line of a place; that place when they do not stand there. */
export const wordsPlace = (journal: Journal, place: Place, words: RegExp): Place => {
  const match = words.exec(lineAt(journal, place));
  return match === null ? place : { ...place, at: spanOf(match.index, match.index + match[0].length) };
};
