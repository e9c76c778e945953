import { type FilePlace, fromOf, toOf } from './span.ts';

/** Puts `put` in the place of the characters at `place` (an empty run inserts). */
export type Edit<P = FilePlace> = { readonly place: P; readonly put: string };

/**
 * Applies the edits that belong to `file` to its lines (line endings apart). Edits must not overlap.
 * @throws RangeError when two edits overlap.
 */
export const applyEdits = (file: string, lines: readonly string[], edits: readonly Edit[]): string[] => {
  const out = [...lines];
  const own = edits
    .filter((edit) => edit.place.file === file)
    .sort((a, b) => b.place.line - a.place.line || b.place.at - a.place.at);
  let line = Number.POSITIVE_INFINITY;
  let start = Number.POSITIVE_INFINITY;
  for (const { place, put } of own) {
    if (place.line === line && toOf(place.at) > start) throw new RangeError(`two edits overlap on line ${line + 1}`);
    line = place.line;
    start = fromOf(place.at);
    const text = out[line] ?? '';
    out[line] = text.slice(0, start) + put + text.slice(toOf(place.at));
  }
  return out;
};
