import { z } from 'zod';
import { BODY_WORDS, isBodyWord } from '../notation/words.ts';
import { Client, Entry, Orphan, Product, Range, Salon, Stock, Stylist, Visit } from './schema/entry.ts';
import * as values from './schema/values.ts';

/**
 * The records as JSON Schema 2020-12, made from the zod schemas: `values.json` for what stands inside a line, one file
 * an entry kind with a definition a first word, and `entry.json` for any of them. A place is `[from, to]` there, as
 * `entry-json.ts` writes it.
 */

type Node = { [key: string]: unknown };

const DRAFT = 'https://json-schema.org/draft/2020-12/schema';
const KINDS = { salon: Salon, stylist: Stylist, range: Range, product: Product, stock: Stock, client: Client };
const ENTRIES = { ...KINDS, visit: Visit, orphan: Orphan };

const isNode = (value: unknown): value is Node => typeof value === 'object' && value !== null && !Array.isArray(value);

const PLACE: Node = {
  type: 'array',
  prefixItems: [
    { type: 'integer', minimum: 0 },
    { type: 'integer', minimum: 0 },
  ],
  minItems: 2,
  maxItems: 2,
  items: false,
};

const plain = (schema: z.ZodType): Node =>
  z.toJSONSchema(schema, {
    target: 'draft-2020-12',
    override: ({ zodSchema, jsonSchema }) => {
      const node = jsonSchema as Node;
      if (zodSchema === values.Place) {
        for (const key of ['type', 'minimum', 'maximum']) delete node[key];
        Object.assign(node, PLACE);
      }
      // What a name is of is for the program (name-fields.ts); a validator knows no such keyword.
      for (const key of ['of', 'gives']) delete node[key];
      // The bounds of a JavaScript integer are no facts of the notation.
      if (node.maximum === Number.MAX_SAFE_INTEGER) delete node.maximum;
      if (node.minimum === Number.MIN_SAFE_INTEGER) delete node.minimum;
      // A boolean or a text that can only be one thing needs no type beside it.
      if (node.const !== undefined) delete node.type;
      // The format says what the long pattern says.
      if (node.format === 'date') delete node.pattern;
    },
  }) as Node;

const kebab = (name: string): string => name.replace(/(?<=[a-z])(?=[A-Z])/g, '-').toLowerCase();

/** What a value is apart from what it is called in one place. */
const bodyOf = ({ title: _title, description: _says, $schema: _draft, ...body }: Node): Node => body;
const keyOf = (node: Node): string => JSON.stringify(bodyOf(node), (_, value: unknown) => sorted(value));
const byName = (node: object): [string, unknown][] => Object.entries(node).sort(([a], [b]) => (a < b ? -1 : 1));
const sorted = (value: unknown): unknown => (isNode(value) ? Object.fromEntries(byName(value)) : value);

/** The values that have a definition of their own, by what they are. */
const valueNodes = (): ReadonlyMap<string, { name: string; node: Node }> =>
  new Map(
    byName(values).flatMap(([name, schema]): [string, { name: string; node: Node }][] => {
      if (!(schema instanceof z.ZodType)) return [];
      const node = plain(schema);
      return [[keyOf(node), { name: kebab(name), node }]];
    }),
  );

/** A copy in which every value that is defined elsewhere is a reference; a title or description of its own stays. */
const referring = (node: unknown, known: ReturnType<typeof valueNodes>, file: string, top = false): unknown => {
  if (Array.isArray(node)) return node.map((one) => referring(one, known, file));
  if (!isNode(node)) return node;
  const found = top ? undefined : known.get(keyOf(node));
  if (found === undefined)
    return Object.fromEntries(Object.entries(node).map(([key, value]) => [key, referring(value, known, file)]));
  const own = (key: 'title' | 'description'): Node =>
    node[key] !== undefined && node[key] !== found.node[key] ? { [key]: node[key] } : {};
  return { ...own('title'), ...own('description'), $ref: `${file}#/$defs/${found.name}` };
};

const wordOf = (line: Node): string => {
  const { word } = line.properties as { word: { const: string } };
  return word.const;
};

const described = ({ title, ...line }: Node): Node => {
  const word = wordOf(line);
  return { title, ...(isBodyWord(word) && { description: BODY_WORDS[word].says }), ...line };
};

const entryFile = (schema: z.ZodType, known: ReturnType<typeof valueNodes>): Node => {
  const { $schema: _draft, title, ...whole } = referring(plain(schema), known, 'values.json', true) as Node;
  const properties = whole.properties as { facts: { items: { oneOf?: Node[] } & Node } };
  const { items } = properties.facts;
  const lines = items.oneOf ?? [items];
  // Words part the lines already, so the first that fits is the only one.
  properties.facts.items = { anyOf: lines.map((line) => ({ $ref: `#/$defs/${wordOf(line)}-line` })) };
  const defs = Object.fromEntries(lines.map((line) => [`${wordOf(line)}-line`, described(line)]));
  return { $schema: DRAFT, title, ...whole, $defs: defs };
};

/** Every schema file, by its name in grammar/schema/. */
export const jsonSchemas = (): ReadonlyMap<string, Node> => {
  const known = valueNodes();
  const defs = Object.fromEntries(
    [...known.values()].map(({ name, node: { $schema: _draft, ...node } }) => [name, referring(node, known, '', true)]),
  );
  const files = new Map<string, Node>([['values.json', { $schema: DRAFT, title: 'Values', $defs: defs }]]);
  for (const [kind, schema] of Object.entries(ENTRIES)) files.set(`${kind}.json`, entryFile(schema, known));
  const refs = Entry.options.map(({ shape }) => ({ $ref: `${[...shape.kind.values].join()}.json` }));
  files.set('entry.json', { $schema: DRAFT, title: 'Entry', oneOf: refs });
  return files;
};
