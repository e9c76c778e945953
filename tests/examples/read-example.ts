/**
 * A conformance example is Markdown that a person reads: a heading a case, and fenced blocks under it. `note` is what
 * was typed; `records`, `findings`, `neaten` and `card` are what the compiler makes of it, each asserted where it stands.
 * A `shelf` block stands beside every case below it, in a file of its own. Text between the blocks is for the reader.
 */

/** The blocks that the compiler writes. */
export const ASSERTED = ['records', 'findings', 'neaten', 'card'] as const;
export type Asserted = (typeof ASSERTED)[number];

export type Block = {
  readonly kind: string;
  /** What stands after the kind on the fence: a card's day. */
  readonly info: string;
  readonly text: string;
  /** The fences' lines, counted from 0. */
  readonly opens: number;
  readonly closes: number;
};

export type Case = {
  readonly title: string;
  readonly shelf: string | undefined;
  readonly note: string;
  readonly blocks: readonly Block[];
};

const FENCE = /^(`{3,})\s*(\w*)\s*(.*)$/;
const HEADING = /^#{1,6}\s+(.*)$/;

type Draft = { title: string; shelf: string | undefined; note?: string; blocks: Block[] };

/** The cases of one Markdown file, in order. Headings without a `note` block are no cases. */
export const readCases = (markdown: string): Case[] => {
  const lines = markdown.split('\n');
  const drafts: Draft[] = [];
  let shelf: string | undefined;
  for (let index = 0; index < lines.length; index++) {
    const line = lines[index] ?? '';
    const heading = HEADING.exec(line);
    if (heading !== null) {
      drafts.push({ title: heading[1] ?? '', shelf, blocks: [] });
      continue;
    }
    const fence = FENCE.exec(line);
    if (fence === null) continue;
    const [, ticks = '```', kind = '', info = ''] = fence;
    const closes = lines.indexOf(ticks, index + 1);
    if (closes < 0) throw new Error(`line ${index + 1}: the block has no end`);
    const text = lines
      .slice(index + 1, closes)
      .map((one) => `${one}\n`)
      .join('');
    const draft = drafts.at(-1);
    if (kind === 'shelf') {
      shelf = text;
      if (draft !== undefined) draft.shelf = shelf;
    } else if (kind === 'note') {
      if (draft === undefined || draft.note !== undefined) throw new Error(`line ${index + 1}: a case has one note`);
      draft.note = text;
    } else draft?.blocks.push({ kind, info, text, opens: index, closes });
    index = closes;
  }
  return drafts.flatMap(({ note, ...draft }) => (note === undefined ? [] : [{ ...draft, note }]));
};

/** The Markdown with the text of some blocks replaced. */
export const withBlocks = (markdown: string, texts: ReadonlyMap<Block, string>): string => {
  const lines = markdown.split('\n');
  const later = [...texts].sort(([a], [b]) => b.opens - a.opens);
  for (const [{ opens, closes }, text] of later)
    lines.splice(opens + 1, closes - opens - 1, ...text.split('\n').slice(0, -1));
  return lines.join('\n');
};
