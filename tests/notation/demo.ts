import { readFileSync } from 'node:fs';
import { findFiles } from '../../src/journal/find.ts';
import { linesOf } from '../../src/text/decode.ts';

export type Notes = { readonly name: string; readonly text: string };

/** Every file of the demo journal. */
export const demo: readonly Notes[] = findFiles('journals/harbour-row').map((path) => ({
  name: path,
  text: readFileSync(path, 'utf8'),
}));

/** Every distinct line of the demo journal. */
export const demoLines: readonly string[] = [...new Set(demo.flatMap(({ text }) => linesOf(text)))];
