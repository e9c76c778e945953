import { entryFacts, type Json } from '../../src/records/entry-json.ts';
import type { Entry } from '../../src/records/schema/entry.ts';

const oneLine = (value: Json): string => {
  if (Array.isArray(value)) return `[${value.map(oneLine).join(', ')}]`;
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  const fields = Object.entries(value).map(([key, inner]) => `${JSON.stringify(key)}: ${oneLine(inner)}`);
  return fields.length === 0 ? '{}' : `{ ${fields.join(', ')} }`;
};

/** Entries as JSON, a line a fact: what the note says, without the places where it says it. */
export const printRecords = (entries: readonly Entry[]): string => {
  const blocks = entries.map((entry) => {
    const { facts, ...head } = entryFacts(entry) as { facts: readonly Json[]; [key: string]: Json };
    const start = oneLine(head).replace(/ \}$/, '');
    const lines = facts.map((fact) => `      ${oneLine(fact)}`);
    return lines.length === 0
      ? `  ${start}, "facts": [] }`
      : `  ${start},\n    "facts": [\n${lines.join(',\n')}\n    ] }`;
  });
  return blocks.length === 0 ? '[]\n' : `[\n${blocks.join(',\n')}\n]\n`;
};
