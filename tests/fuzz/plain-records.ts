import type { Source } from '../../src/journal/source.ts';
import { withoutSpace } from '../../src/notation/space.ts';

/** Fields that keep characters as typed, white space and all: what was not read, and the words of a notice. */
const AS_TYPED: ReadonlySet<string> = new Set(['typed', 'rest', 'header', 'message', 'todo', 'put', 'label']);

const plain = (value: unknown, asTyped = false): unknown => {
  if (typeof value === 'string') return asTyped ? withoutSpace(value) : value;
  if (Array.isArray(value)) return value.map((item) => plain(item, asTyped));
  if (value === null || typeof value !== 'object') return value;
  return Object.fromEntries(
    Object.entries(value)
      .filter(([key]) => key !== 'at' && key !== 'line')
      .map(([key, inner]) => [key, plain(inner, asTyped || AS_TYPED.has(key))]),
  );
};

/** The entries and notices of a file without their places, to compare two layouts of the same notes. */
export const plainRecords = ({ entries, notices }: Source): unknown => ({
  entries: entries.map(({ entry, notices: own }) => ({ entry: plain(entry), notices: plain(own) })),
  notices: plain(notices),
});
