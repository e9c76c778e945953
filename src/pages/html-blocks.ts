import type { Env, MarkdownIt, StateCore, Token } from 'markdown-it';
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
    const end = tokens.findIndex(({ type, level }, at) => at > index && type === closing && level === token.level);
    const run = tokens.slice(index, end + 1);
    if (closing === 'table_close') {
      dressTable(run);
      out.push(...withCaption(out, run));
    } else out.push(...termsOf(run, (type, tag, nesting) => blockToken(new Made(type, tag, nesting))));
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

/** Cuts the blocks of a page at its headings and renders each run; `env` goes to the rules that render. */
export const sectionsOf = (markdown: MarkdownIt, source: string, env: Env = {}): Section[] => {
  const tokens = markdown.parse(source, env);
  const idOf = idsOf();
  const sections: Section[] = [];
  let run: Token[] = [];
  let head = { id: '', title: '', level: 0 };
  const close = (): void => {
    if (run.length > 0) sections.push({ ...head, html: markdown.renderer.render(run, markdown.options, env) });
    run = [];
  };
  for (const [index, token] of tokens.entries()) {
    if (token.type === 'heading_open') {
      close();
      const title = plainText(tokens[index + 1]);
      head = { id: idOf(title), title, level: Number(token.tag.slice(1)) };
      token.attrSet('id', head.id);
    }
    run.push(token);
  }
  close();
  return sections;
};
