import { z } from 'zod';
import { Entry } from './entry.ts';
import { factBase, Name, type Namespace } from './values.ts';

/** A field of a record that names something: of what, whether the line gives the name, and the way to it. */
export type NamedField = {
  readonly of: Namespace;
  readonly gives?: true;
  /** Keys from the head of an entry or from a fact; at a list, each of it is meant. */
  readonly path: readonly string[];
};

/** What the schemas say of every name: in any line, and by kind of entry and by first word where there is more. */
export type NamedFields = {
  readonly line: readonly NamedField[];
  readonly heads: Readonly<Record<string, readonly NamedField[]>>;
  readonly facts: Readonly<Record<string, readonly NamedField[]>>;
};

/** @throws Error where a name does not say of what it is. */
const fieldsOf = (schema: z.core.$ZodType, path: readonly string[]): NamedField[] => {
  if (schema instanceof z.ZodOptional) return fieldsOf(schema.unwrap(), path);
  if (schema instanceof z.ZodArray) return fieldsOf(schema.element, path);
  if (schema instanceof z.ZodDiscriminatedUnion) return schema.options.flatMap((one) => fieldsOf(one, path));
  if (!(schema instanceof z.ZodObject)) return [];
  const { of, gives } = (schema.meta() ?? {}) as { of?: Namespace; gives?: 'gives' };
  if (of !== undefined) return [{ of, ...(gives !== undefined && { gives: true as const }), path }];
  if (schema.shape === Name.shape)
    throw new Error(`${path.join('.')}: the schema does not say what the name is of; write nameOf('…')`);
  return Object.entries(schema.shape).flatMap(([key, inner]) =>
    key === 'facts' ? [] : fieldsOf(inner as z.core.$ZodType, [...path, key]),
  );
};

/** Reads the schemas: for the generated table beside them, since the program runs without schemas. */
export const namedFields = (): NamedFields => {
  const heads: Record<string, readonly NamedField[]> = {};
  const facts: Record<string, readonly NamedField[]> = {};
  for (const entry of Entry.options) {
    heads[[...entry.shape.kind.values].join()] = fieldsOf(entry, []);
    const lines = entry.shape.facts.element;
    for (const line of lines.options) {
      const own = fieldsOf(line, []).filter(({ path: [key = ''] }) => !(key in factBase));
      if (own.length > 0) facts[[...line.shape.word.values].join()] = own;
    }
  }
  return { line: fieldsOf(z.object(factBase), []), heads, facts };
};
