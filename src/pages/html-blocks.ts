import type { Env, MarkdownIt, StateCore, Token } from 'markdown-it';
import { figuresIn } from './figures/sheet.ts';
import { termsOf } from './html-lists.ts';
import { dressTable, isCaption } from './html-tables.ts';

/** A run of blocks under one heading; blocks before the first heading have none. */
export type Section = {
  readonly id: string;
  readonly title: string;
  readonly level: number;
  readonly html: string;
};

/** A table with the caption that stands above it, taken off `out`. */
const withCaption = (out: Token[], table: readonly Token[]): readonly Token[] => {
  const [open, inline, close] = out.slice(-3);
  const [first, ...rest] = table;
  if (first === undefined || open === undefined || inline === undefined || close === undefined) return table;
  if (!isCaption(open, inline)) return table;
  out.splice(-3);
  open.tag = 'caption';
  close.tag = 'caption';
  return [first, open, inline, close, ...rest];
};

/** Dresses tables and lists of terms; a step of the Markdown reader, after its own. */
export const dressBlocks = ({ tokens, Token: Made }: StateCore): Token[] => {
  const out: Token[] = [];
  for (let index = 0; index < tokens.length; index += 1) {
    const token = tokens[index] as Token;
    const closing =
      token.type === 'table_open' ? 'table_close' : token.type === 'bullet_list_open' ? 'bullet_list_close' : undefined;
    if (closing === undefined) {
      out.push(token);
      continue;
    }
    let end = index + 1;
    while (tokens[end]?.type !== closing || tokens[end]?.level !== token.level) end += 1;
    const run = tokens.slice(index, end + 1);
    if (closing === 'table_close') dressTable(run);
    const dressed =
      closing === 'table_close'
        ? withCaption(out, run)
        : termsOf(run, (type, tag, nesting) => blockToken(new Made(type, tag, nesting)));
    // One by one: the table of all clients of a large salon is too long to be handed over as arguments.
    for (const one of dressed) out.push(one);
    index = end;
  }
  return out;
};

const blockToken = (token: Token): Token => {
  token.block = true;
  return token;
};

const plainText = (inline: Token | undefined): string =>
  (inline?.children ?? []).map(({ content }) => content).join('');

/** An id for a heading: its date, or its letters; a second one of the same name is numbered. */
const idsOf = (): ((title: string) => string) => {
  const used = new Map<string, number>();
  return (title) => {
    const date = /^\d{4}-\d{2}-\d{2}/.exec(title)?.[0];
    const word = date === undefined ? title.toLowerCase().replace(/[^a-z0-9]+/g, '-') : `day-${date}`;
    const name = word.replace(/^-+|-+$/g, '') || 'part';
    const times = (used.get(name) ?? 0) + 1;
    used.set(name, times);
    return times === 1 ? name : `${name}-${times}`;
  };
};

/** Sections as they were rendered the last time, by their Markdown and the figures in it. */
export type Rendered = Map<string, Section>;

const render = (markdown: MarkdownIt, source: string, env: Env, idOf: (title: string) => string): Section => {
  const tokens = markdown.parse(source, env);
  const [first, inline] = tokens;
  const isHeaded = first?.type === 'heading_open';
  const title = isHeaded ? plainText(inline) : '';
  const id = isHeaded ? idOf(title) : '';
  if (isHeaded) first.attrSet('id', id);
  const level = isHeaded ? Number(first.tag.slice(1)) : 0;
  return { id, title, level, html: markdown.renderer.render(tokens, markdown.options, env) };
};

/**
 * Cuts a page at its headings, which our pages write at the beginning of a line, and renders each section; `env` goes to
 * the rules that render. A section that is in `rendered` with the same Markdown and the same figures is not rendered
 * again; afterwards it holds the sections of this page.
 */
export const sectionsOf = (
  markdown: MarkdownIt,
  source: string,
  env: Env & { readonly figures: readonly string[] },
  rendered?: Rendered,
): Section[] => {
  const idOf = idsOf();
  const now: Rendered = new Map();
  const sections = source
    .split(/^(?=#{1,6} )/mu)
    .filter((piece) => piece.trim() !== '')
    .map((piece) => {
      const made = rendered === undefined ? '' : piece + figuresIn(piece, env.figures);
      const known = rendered?.get(made);
      const id = known === undefined ? '' : idOf(known.title);
      const section = known?.id === id ? known : render(markdown, piece, env, known === undefined ? idOf : () => id);
      now.set(made, section);
      return section;
    });
  rendered?.clear();
  if (rendered !== undefined) for (const [made, section] of now) rendered.set(made, section);
  return sections;
};
