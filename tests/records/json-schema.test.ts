import Ajv2020 from 'ajv/dist/2020.js';
import addFormats from 'ajv-formats';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { BODY_WORDS, HEADERS } from '../../src/notation/words.ts';
import { entryFacts, entryJson, type Json } from '../../src/records/entry-json.ts';
import { jsonSchemas } from '../../src/records/json-schema.ts';
import { Entry } from '../../src/records/schema/entry.ts';
import { demoSources } from '../journal/demo.ts';

const validator = new Ajv2020({ strict: true });
addFormats(validator);
for (const [name, schema] of jsonSchemas()) validator.addSchema(schema, name);
/** Compiling a schema and reading the demo take a slow machine some seconds. */
const PATIENCE = 60_000;

const entries = demoSources().flatMap((source) => source.entries.map(({ entry }) => entry));
const fits = (entry: object): boolean => {
  const { kind } = entry as { kind?: unknown };
  return validator.getSchema(`${typeof kind === 'string' ? kind : 'entry'}.json`)?.(entryJson(entry as Entry)) === true;
};

type Spot = { readonly holder: { [key: string]: unknown }; readonly key: string };

/** Every value inside an entry but its places, which the two schemas write differently. */
const spotsIn = (value: unknown): Spot[] => {
  if (typeof value !== 'object' || value === null) return [];
  const holder = value as { [key: string]: unknown };
  return Object.keys(holder).flatMap((key) => (key === 'at' ? [] : [{ holder, key }, ...spotsIn(holder[key])]));
};

describe('JSON Schema 2020-12, read by another validator', () => {
  test('there is a file an entry kind, one for values and one for any entry', () => {
    const kinds = [...HEADERS, 'orphan', 'values', 'entry'].map((name) => `${name}.json`);
    expect([...jsonSchemas().keys()].sort()).toEqual(kinds.sort());
  });

  test('every word has a record with a title and a description', () => {
    const lines = [...jsonSchemas().values()].flatMap(({ $defs }) => Object.entries($defs ?? {}));
    const titled = new Map(lines as [string, { title?: string; description?: string }][]);
    for (const word of Object.keys(BODY_WORDS)) {
      expect(titled.get(`${word}-line`)?.title, word).toBeTruthy();
      expect(titled.get(`${word}-line`)?.description, word).toBeTruthy();
    }
  });

  test(
    'every entry of the demo journal fits',
    () => {
      expect(entries.length).toBeGreaterThan(300);
      expect(entries.filter((entry) => !fits(entry))).toEqual([]);
    },
    PATIENCE,
  );

  test.each<[string, (entry: { [key: string]: Json }) => void]>([
    ['an entry without facts', (entry) => delete entry.facts],
    ['a field that no record has', (entry) => Object.assign(entry, { colour: 'blue' })],
    ['a day that no calendar has', (entry) => Object.assign(entry, { date: { date: '2026-02-30', at: [0, 1] } })],
    ['a place of one number', (entry) => Object.assign(entry, { date: { date: '2026-02-03', at: [0] } })],
    ['a place of three', (entry) => Object.assign(entry, { date: { date: '2026-02-03', at: [0, 1, 2] } })],
    ['a word of another entry', (entry) => Object.assign(entry, { facts: [{ word: 'mix', line: 1 }] })],
  ])('%s does not fit', (_, spoil) => {
    const visit = entries.find(({ kind }) => kind === 'visit');
    const json = structuredClone(entryJson(visit as Entry)) as { [key: string]: Json };
    const schema = validator.getSchema('visit.json');
    expect(schema?.(json)).toBe(true);
    spoil(json);
    expect(schema?.(json)).toBe(false);
  });

  test(
    'a record that is spoilt at random fits both schemas or neither',
    () => {
      const some = fc.constantFrom(...entries.filter(({ facts }) => facts.length > 0));
      const puts = fc.constantFrom<unknown>(undefined, null, '', 'x', -1, 0, 1.5, true, [], {});
      fc.assert(
        fc.property(some, fc.nat(), puts, (entry, pick, put) => {
          const spoilt = structuredClone(entry) as Entry;
          const spots = spotsIn(spoilt);
          const spot = spots[pick % spots.length];
          if (spot === undefined) return;
          if (put !== undefined) spot.holder[spot.key] = put;
          else if (Array.isArray(spot.holder)) spot.holder.splice(Number(spot.key), 1);
          else delete spot.holder[spot.key];
          // Records drop a field they do not know; the JSON Schema refuses it. Only known fields are spoilt here.
          expect(fits(spoilt)).toBe(Entry.safeParse(spoilt).success);
        }),
        { seed: 20_260_904, numRuns: 600 },
      );
    },
    PATIENCE,
  );
});

describe('entries as JSON', () => {
  const clock = { minutes: 840, at: 6 * 0x400000 + 5 };
  const entry: Entry = { kind: 'visit', time: clock, facts: [{ word: 'note', line: 1, text: 'at the door' }] };

  test('places are first character and one past the last', () => {
    expect(entryJson(entry)).toEqual({
      kind: 'visit',
      time: { minutes: 840, at: [6, 11] },
      facts: [{ word: 'note', line: 1, text: 'at the door' }],
    });
  });

  test('facts alone leave out where they stand', () => {
    expect(entryFacts(entry)).toEqual({
      kind: 'visit',
      time: { minutes: 840 },
      facts: [{ word: 'note', text: 'at the door' }],
    });
  });
});
