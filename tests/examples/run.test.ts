import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import Ajv2020 from 'ajv/dist/2020.js';
import addFormats from 'ajv-formats';
import { describe, expect, test } from 'vitest';
import { neatenText } from '../../src/notation/neaten.ts';
import { entryJson } from '../../src/records/entry-json.ts';
import { jsonSchemas } from '../../src/records/json-schema.ts';
import { Entry } from '../../src/records/schema/entry.ts';
import { judge } from '../../src/rules/judging.ts';
import { compileBlock, journalOf, sourceOf } from './compile-case.ts';
import { printRecords } from './print-records.ts';
import { ASSERTED, type Asserted, type Block, readCases, withBlocks } from './read-example.ts';

const FOLDER = 'grammar/examples';
/** UPDATE=1 (npm run renew) writes what the compiler makes of each note into the example, for a person to read and judge. */
const UPDATE = process.env.UPDATE === '1';

const isAsserted = (kind: string): kind is Asserted => (ASSERTED as readonly string[]).includes(kind);

const updated = (markdown: string): string => {
  const made = new Map<Block, string>();
  for (const one of readCases(markdown))
    for (const block of one.blocks) if (isAsserted(block.kind)) made.set(block, compileBlock(one, block.kind, block));
  return withBlocks(markdown, made);
};

const files = readdirSync(FOLDER, { recursive: true, encoding: 'utf8' })
  .map((name) => `${FOLDER}/${name.replaceAll('\\', '/')}`)
  .filter((path) => path.endsWith('.md'))
  .sort()
  .map((path) => {
    if (UPDATE) writeFileSync(path, updated(readFileSync(path, 'utf8')));
    return { path, cases: readCases(readFileSync(path, 'utf8')) };
  });

const schemas = new Ajv2020({ strict: true });
addFormats(schemas);
for (const [name, schema] of jsonSchemas()) schemas.addSchema(schema, name);
/** A long note has thousands of prefixes, and a slow machine takes its time over them. */
const PATIENCE = 60_000;

test('there are examples to run', () => {
  expect(files.flatMap(({ cases }) => cases).length).toBeGreaterThanOrEqual(24);
});

describe.each(files)('$path', ({ cases }) => {
  test('every heading is its own, and every case asserts something', () => {
    expect(new Set(cases.map(({ title }) => title)).size).toBe(cases.length);
    expect(cases.filter(({ blocks }) => blocks.length === 0).map(({ title }) => title)).toEqual([]);
    expect(
      cases.flatMap(({ blocks }) => blocks.filter(({ kind }) => !isAsserted(kind)).map(({ kind }) => kind)),
    ).toEqual([]);
  });

  describe.each(cases)('$title', (one) => {
    const { note, shelf, blocks } = one;

    test.each(blocks.filter(({ kind }) => isAsserted(kind)))('$kind are as the example says', (block) => {
      if (isAsserted(block.kind)) expect(compileBlock(one, block.kind, block)).toBe(block.text);
    });

    test(
      'every prefix of the note compiles',
      () => {
        for (let end = 0; end <= note.length; end++) sourceOf('note.bowl', note.slice(0, end));
        const ends = [...note.matchAll(/\n|(?<=.{20}) /g)].map(({ index }) => index);
        for (const end of ends) judge(journalOf(note.slice(0, end), shelf)).all();
      },
      PATIENCE,
    );

    test('neatened twice is neatened once, and says the same', () => {
      const neaten = neatenText(note);
      expect(neatenText(neaten)).toBe(neaten);
      const records = (text: string): string =>
        printRecords(sourceOf('note.bowl', text).entries.map(({ entry }) => entry));
      expect(records(neaten)).toBe(records(note));
    });

    test(
      'its records fit the schema, and the JSON Schema by another validator',
      () => {
        for (const { entry } of sourceOf('note.bowl', note).entries) {
          expect(Entry.safeParse(entry).error).toBeUndefined();
          const fits = schemas.getSchema('entry.json');
          const fitsKind = schemas.getSchema(`${entry.kind}.json`);
          expect(fitsKind?.(entryJson(entry)), schemas.errorsText(fitsKind?.errors)).toBe(true);
          expect(fits?.(entryJson(entry))).toBe(true);
        }
      },
      PATIENCE,
    );
  });
});
