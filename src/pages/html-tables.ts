import type { Token } from 'markdown-it';

/**
 * Tables as a page needs them: a caption, headings with a scope, the first cell of a row as its heading, figures by class
 * (a style in an attribute would be against the page's own policy), and each cell's heading beside it for narrow windows.
 */

/** Tables with more columns than this are folded on a phone, a row a block; figures are narrower than words. */
const MOST_UNFOLDED = { figures: 3, words: 2 } as const;

const ROLES: Readonly<Record<string, string>> = {
  table_open: 'table',
  thead_open: 'rowgroup',
  tbody_open: 'rowgroup',
  tr_open: 'row',
  td_open: 'cell',
};

type Cell = { readonly open: Token; readonly close: Token; readonly text: string };

const cellsOf = (tokens: readonly Token[]): Cell[] =>
  tokens.flatMap((open, index) => {
    const [inline, close] = [tokens[index + 1], tokens[index + 2]];
    const isCell = open.type === 'th_open' || open.type === 'td_open';
    return isCell && inline !== undefined && close !== undefined ? [{ open, close, text: inline.content }] : [];
  });

const asHeading = ({ open, close }: Cell, scope: 'col' | 'row'): void => {
  open.tag = 'th';
  close.tag = 'th';
  open.attrSet('scope', scope);
  open.attrSet('role', scope === 'col' ? 'columnheader' : 'rowheader');
};

const figuresByClass = ({ open }: Cell): void => {
  const style = open.attrGet('style');
  if (style === null) return;
  open.attrs = (open.attrs ?? []).filter(([name]) => name !== 'style');
  if (String(style).includes('right')) open.attrJoin('class', 'figures');
};

/** Dresses the tokens of one table, from its opening to its closing one. */
export const dressTable = (tokens: readonly Token[]): void => {
  const body = tokens.findIndex(({ type }) => type === 'tbody_open');
  const split = body < 0 ? tokens.length : body;
  const heads = cellsOf(tokens.slice(0, split));
  const cells = cellsOf(tokens.slice(split));
  const columns = Math.max(1, heads.length);
  for (const token of tokens) {
    const role = ROLES[token.type];
    if (role !== undefined) token.attrSet('role', role);
  }
  for (const cell of heads) asHeading(cell, 'col');
  for (const [index, cell] of cells.entries()) {
    if (index % columns === 0) asHeading(cell, 'row');
    else cell.open.attrSet('data-head', heads[index % columns]?.text ?? '');
  }
  for (const cell of [...heads, ...cells]) figuresByClass(cell);
  const figures = heads.some(({ open }) => open.attrGet('class') === 'figures');
  if (columns > MOST_UNFOLDED[figures ? 'figures' : 'words']) tokens[0]?.attrJoin('class', 'folds');
};

/** Whether three tokens are a paragraph that begins in bold: above a table it is the table's caption. */
export const isCaption = (open: Token | undefined, inline: Token | undefined): boolean =>
  open?.type === 'paragraph_open' &&
  inline?.type === 'inline' &&
  inline.children?.find(({ content, type }) => type !== 'text' || content !== '')?.type === 'strong_open';
