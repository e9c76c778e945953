import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { dump } from 'js-yaml';
import { readSource } from '../../src/journal/source.ts';
import { entryFacts } from '../../src/records/entry-json.ts';

/** Writes what the notes of a folder say, as JSON and as YAML, a file of each for a file of notes. */
export const writeSameFacts = (folder: string, to: string): void => {
  for (const name of readdirSync(folder, { recursive: true, encoding: 'utf8' })) {
    if (!name.endsWith('.bowl')) continue;
    const { entries } = readSource(name, readFileSync(join(folder, name)));
    const facts = entries.map(({ entry }) => entryFacts(entry));
    const path = join(to, name);
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(`${path}.json`, JSON.stringify(facts));
    writeFileSync(`${path}.yaml`, dump(facts, { noRefs: true, lineWidth: -1 }));
  }
};
