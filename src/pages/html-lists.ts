import type { Token } from 'markdown-it';

/**
 * Lists whose every item begins in bold are lists of terms: the bold is the term, the rest what the notes say of it. Equal
 * terms that follow each other are said once.
 */

type Make = (type: string, tag: string, nesting: 1 | 0 | -1) => Token;

/** The inline token of a list item that is one plain paragraph; undefined for any other. */
const inlineOf = (item: readonly Token[]): Token | undefined =>
  item.length === 5 && item[2]?.type === 'inline' ? item[2] : undefined;

const isTerm = (inline: Token | undefined): inline is Token => {
  const first = inline?.children?.find(({ type, content }) => type !== 'text' || content !== '');
  return first?.type === 'strong_open';
};

const itemsOf = (list: readonly Token[]): Token[][] => {
  const items: Token[][] = [];
  for (const token of list.slice(1, -1)) {
    if (token.type === 'list_item_open') items.push([]);
    items.at(-1)?.push(token);
  }
  return items;
};

const inlineWith = (make: Make, children: Token[]): Token => {
  const inline = make('inline', '', 0);
  const [first] = children;
  if (first?.type === 'text') first.content = first.content.trimStart();
  inline.children = children;
  inline.content = children.map(({ content }) => content).join('');
  return inline;
};

/** The term and the rest of an item. */
const cut = (inline: Token): { term: Token[]; rest: Token[] } => {
  const children = inline.children ?? [];
  const open = children.findIndex(({ type }) => type === 'strong_open');
  const close = children.findIndex(({ type }) => type === 'strong_close');
  return { term: children.slice(open + 1, close), rest: children.slice(close + 1) };
};

const textOf = (tokens: readonly Token[]): string => tokens.map(({ content }) => content).join('');

/** The tokens of a list of terms for those of a bullet list; the same tokens when an item begins otherwise. */
export const termsOf = (list: readonly Token[], make: Make): readonly Token[] => {
  const inlines = itemsOf(list).map(inlineOf);
  if (!inlines.every(isTerm)) return list;
  const out: Token[] = [make('dl_open', 'dl', 1)];
  let before: string | undefined;
  for (const inline of inlines) {
    const { term, rest } = cut(inline);
    if (textOf(term) !== before) {
      if (before !== undefined) out.push(make('div_close', 'div', -1));
      out.push(
        make('div_open', 'div', 1),
        make('dt_open', 'dt', 1),
        inlineWith(make, term),
        make('dt_close', 'dt', -1),
      );
      before = textOf(term);
    }
    out.push(make('dd_open', 'dd', 1), inlineWith(make, rest), make('dd_close', 'dd', -1));
  }
  out.push(make('div_close', 'div', -1), make('dl_close', 'dl', -1));
  return out;
};
