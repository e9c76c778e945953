import { readdirSync, readFileSync } from 'node:fs';
import { readSource } from '../../../src/journal/source.ts';
import { entryFacts, type Json } from '../../../src/records/entry-json.ts';
import type { Entry } from '../../../src/records/schema/entry.ts';
import { readCases } from '../../examples/read-example.ts';
import { WORD_EXAMPLES } from '../../grammar/word-examples.ts';
import { demo, type Notes } from '../../notation/demo.ts';
import { examples } from '../../notation/examples.ts';

const filesIn = (folder: string, ends: string): string[] =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .map((name) => `${folder}/${name.replaceAll('\\', '/')}`)
    .filter((path) => path.endsWith(ends))
    .sort();

const grammar = filesIn('grammar/examples', '.md').flatMap((path) =>
  readCases(readFileSync(path, 'utf8')).flatMap(({ title, note, shelf = '' }) => [
    { name: `${path}, ${title}`, text: note },
    { name: `${path}, ${title}, shelf`, text: shelf },
  ]),
);

/** Every note that the tests hold: the grammar's examples, those of each word, the demo journal and the cases. */
export const NOTES: readonly Notes[] = [
  ...demo,
  ...examples,
  ...grammar,
  ...Object.entries(WORD_EXAMPLES).map(([name, text]) => ({ name, text: text.replace(/^>/m, ' ') })),
  ...filesIn('tests/cases', '.bowl').map((name) => ({ name, text: readFileSync(name, 'utf8') })),
];

export const entriesOf = (text: string): Entry[] =>
  readSource('notes.bowl', Buffer.from(text)).entries.map(({ entry }) => entry);

/** What an entry says, wherever it stands, its fields in order of their names. */
export const saidBy = (entry: Entry): string =>
  JSON.stringify(entryFacts(entry), (_, value: Json) =>
    typeof value === 'object' && value !== null && !Array.isArray(value)
      ? Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1)))
      : value,
  );
