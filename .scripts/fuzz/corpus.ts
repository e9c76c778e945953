import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { findFiles } from '../../src/journal/find.ts';
import { cutEntries } from '../../src/notation/cut.ts';
import { tokensOf } from '../../src/notation/lexer.ts';
import { type EntryKind, FIRST_WORDS, HEADERS } from '../../src/notation/words.ts';
import { linesOf } from '../../src/text/decode.ts';
import { KINDS } from '../../src/trade/kinds.ts';
import { STAGES } from '../../src/trade/stages.ts';
import { ALONG, COVERS, GROUPS, TECHNIQUES, ZONES } from '../../src/trade/zones.ts';

/**
 * What cases are made from: the demo journal and the notes of the conformance examples.
 *
 * Reads: `journals/` and `grammar/examples/`, from the project's own folder. Runs once.
 */
export type Corpus = {
  /** Whole files of notes. */
  readonly files: readonly string[];
  /** Notes of one example with the shelf that stands beside them, or of the demo with its shelf. */
  readonly journals: readonly { readonly shelf: readonly string[]; readonly notes: readonly string[] }[];
  /** Every distinct line. */
  readonly lines: readonly string[];
  /** Body lines by the kind of entry they stand under, with each kind's headers. */
  readonly under: Readonly<Record<EntryKind, { readonly heads: readonly string[]; readonly body: readonly string[] }>>;
  /** Every distinct word and figure by the lexer's name for its kind. */
  readonly tokens: ReadonlyMap<string, readonly string[]>;
  readonly allTokens: readonly string[];
  readonly firstWords: readonly string[];
};

const FENCED = /^```(shelf|note)\b.*\n([\s\S]*?)^```$/gm;

/** The `shelf` and `note` blocks of one example file: each note with the shelf above it. */
const journalsIn = (markdown: string): { shelf: string[]; notes: string[] }[] => {
  let shelf: string[] = [];
  const found: { shelf: string[]; notes: string[] }[] = [];
  for (const [, kind, text = ''] of markdown.matchAll(FENCED)) {
    if (kind === 'shelf') shelf = [text];
    else found.push({ shelf, notes: [text] });
  }
  return found;
};

const distinct = <T>(list: readonly T[]): T[] => [...new Set(list)];

/** Reads the corpus; what it holds follows the order of the files' names. */
export const readCorpus = (root = '.'): Corpus => {
  const folder = join(root, 'grammar', 'examples');
  const markdown = readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.md'))
    .sort()
    .map((name) => readFileSync(join(folder, name), 'utf8'));
  const examples = markdown.flatMap(journalsIn);
  const demo = findFiles(join(root, 'journals', 'harbour-row')).map((path) => ({
    shared: !/clients|days/.test(path),
    text: readFileSync(path, 'utf8'),
  }));
  const shelf = demo.filter(({ shared }) => shared).map(({ text }) => text);
  const own = demo.filter(({ shared }) => !shared).map(({ text }) => text);
  const files = distinct([...demo.map(({ text }) => text), ...examples.flatMap((one) => [...one.shelf, ...one.notes])]);
  const under = Object.fromEntries(HEADERS.map((kind) => [kind, { heads: [], body: [] }])) as unknown as Record<
    EntryKind,
    { heads: string[]; body: string[] }
  >;
  for (const text of files) {
    const lines = linesOf(text);
    for (const { opens, start, end } of cutEntries(lines)) {
      if (opens === 'orphan') continue;
      under[opens].heads.push(lines[start] ?? '');
      under[opens].body.push(...lines.slice(start + 1, end));
    }
  }
  const lines = distinct(files.flatMap(linesOf));
  const tokens = new Map<string, Set<string>>();
  for (const line of lines)
    for (const { tokenType, image } of tokensOf(line)) {
      const same = tokens.get(tokenType.name);
      if (same === undefined) tokens.set(tokenType.name, new Set([image]));
      else same.add(image);
    }
  const words = [...KINDS, ...STAGES, ...ZONES, ...ALONG, ...GROUPS, ...TECHNIQUES, ...COVERS];
  for (const word of words) tokens.get('Word')?.add(word);
  const byKind = new Map([...tokens].map(([name, images]) => [name, [...images]]));
  return {
    files,
    // A client at a time: a case is to be small.
    journals: [
      ...examples,
      ...own.flatMap((text) => text.split(/^(?=client )/m)).map((one) => ({ shelf, notes: [one] })),
    ],
    lines,
    under,
    tokens: byKind,
    allTokens: [...byKind.values()].flat(),
    firstWords: FIRST_WORDS,
  };
};
