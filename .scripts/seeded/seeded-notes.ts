import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type Journal, joinSources } from '../../src/journal/journal.ts';
import { readSource, type Source } from '../../src/journal/source.ts';
import { entryLines } from '../../src/journal/where.ts';
import type { VisitReckoned } from '../../src/reckon/model.ts';
import { reckonClient } from '../../src/reckon/visit.ts';
import { judge } from '../../src/rules/judging.ts';
import type { Finding } from '../../src/text/finding.ts';
import { readCases } from '../../tests/examples/read-example.ts';

/** A visit to plant a mistake in: the lines of its client before it, its own lines, and what was reckoned of it. */
export type SeededNote = {
  /** Where it comes from, for the report. */
  readonly from: string;
  /** Salon, shelf and stock. */
  readonly shared: readonly Source[];
  /** The client's own entries and her earlier visits. */
  readonly before: readonly string[];
  /** The visit, header first. */
  readonly visit: readonly string[];
  readonly reckoned: VisitReckoned;
};

/** The day every note is checked for: after all of them, so that what is asked for once a visit is over is asked for. */
export const CHECKED_ON = '2026-12-01';

const NOTE = 'note.bowl';

/** What is found in the lines of one client, with the salon and the shelf that she is served by. */
export const foundIn = (
  { shared }: Pick<SeededNote, 'shared'>,
  before: readonly string[],
  visit: readonly string[],
): readonly Finding[] => {
  const text = `${[...before, ...visit].join('\n')}\n`;
  const { findings } = judge(joinSources([...shared, readSource(NOTE, Buffer.from(text))]), CHECKED_ON).all();
  return findings.filter(({ place }) => place.file === NOTE);
};

/** Lines of a file that stand in no client's or visit's entry: what all clients share. */
const sharedOf = (source: Source): Source => {
  const lines = source.lines.map((text, line) => {
    const stood = source.entries[source.standing.findIndex(({ start, end }) => start <= line && line < end)];
    return stood === undefined || stood.entry.kind === 'client' || stood.entry.kind === 'visit' ? '' : text;
  });
  return readSource(source.path, Buffer.from(lines.join('\n')));
};

/** Every visit of a journal in which nothing above a `mind` is found, as a note by itself. */
const notesOf = (journal: Journal, from: string): SeededNote[] => {
  const shared = [...journal.sources.values()].map(sharedOf).filter(({ entries }) => entries.length > 0);
  const all: SeededNote[] = [];
  for (const client of journal.clients.values()) {
    const before = client.entries.flatMap((stood) => entryLines(journal, stood));
    for (const reckoned of reckonClient(journal, client)) {
      const visit = entryLines(journal, reckoned.visit);
      const found = foundIn({ shared }, before, visit).filter(({ severity }) => severity !== 'mind');
      if (found.length === 0)
        all.push({ from: `${from} ${client.name} ${reckoned.date}`, shared, before: [...before], visit, reckoned });
      before.push(...visit);
    }
  }
  return all;
};

const filesBelow = (folder: string, ending: string): string[] =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith(ending))
    .sort()
    .map((name) => join(folder, name));

/** The sound visits of the demo journal. */
export const demoNotes = (): SeededNote[] =>
  notesOf(
    joinSources(filesBelow('journals/harbour-row', '.bowl').map((path) => readSource(path, readFileSync(path)))),
    'demo',
  );

/** The sound visits of the examples in `grammar/examples/sound`. */
export const exampleNotes = (): SeededNote[] =>
  filesBelow('grammar/examples/sound', '.md').flatMap((path) =>
    readCases(readFileSync(path, 'utf8')).flatMap(({ note, shelf = '', title }) =>
      notesOf(
        joinSources([readSource('shelf.bowl', Buffer.from(shelf)), readSource(NOTE, Buffer.from(note))]),
        `example “${title}”`,
      ),
    ),
  );
