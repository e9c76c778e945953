import { fromOf, toOf } from '../text/span.ts';
import type { Entry } from './schema/entry.ts';

/** What JSON can hold. */
export type Json = string | number | boolean | null | readonly Json[] | { readonly [key: string]: Json };

const walk = (value: unknown, keep: (key: string, value: unknown) => Json | undefined): Json => {
  if (Array.isArray(value)) return value.map((one) => walk(one, keep));
  if (typeof value !== 'object' || value === null) return value as Json;
  const out: Record<string, Json> = {};
  for (const [key, inner] of Object.entries(value)) {
    const kept = keep(key, inner);
    if (kept !== undefined) out[key] = kept;
  }
  return out;
};

/** An entry as plain JSON, its places as `[from, to]` in UTF-16 units within their line: what grammar/schema/ describes. */
export const entryJson = (entry: Entry): Json => {
  const keep = (key: string, value: unknown): Json | undefined =>
    key === 'at' && typeof value === 'number' ? [fromOf(value), toOf(value)] : walk(value, keep);
  return walk(entry, keep);
};

/** An entry as plain JSON without places and line numbers: what it says, wherever it stands. */
export const entryFacts = (entry: Entry): Json => {
  const keep = (key: string, value: unknown): Json | undefined =>
    (key === 'at' || key === 'line') && typeof value === 'number' ? undefined : walk(value, keep);
  return walk(entry, keep);
};
