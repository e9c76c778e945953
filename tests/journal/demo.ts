import { readFileSync } from 'node:fs';
import { findFiles } from '../../src/journal/find.ts';
import { type Journal, joinSources } from '../../src/journal/journal.ts';
import { readSource, type Source } from '../../src/journal/source.ts';

/** Every file of notes of the demo journal, read. */
export const demoSources = (): Source[] =>
  findFiles('journals/harbour-row').map((path) => readSource(path, readFileSync(path)));

/** The demo journal. */
export const demoJournal = (): Journal => joinSources(demoSources());
