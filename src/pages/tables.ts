/** A column of a table: its heading, and whether it holds figures, which stand to the right. */
export type Column = { readonly head: string; readonly figures?: boolean };

/**
 * A Markdown table. The first column names its row. A caption is a paragraph right above that begins in bold; the HTML
 * page makes a real caption of it. Cells are Markdown already.
 */
export const table = (columns: readonly Column[], rows: readonly (readonly string[])[], caption?: string): string => {
  const line = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;
  const rule = `|${columns.map(({ figures }) => (figures ? ' ---: ' : ' --- ')).join('|')}|`;
  const body = [line(columns.map(({ head }) => head)), rule, ...rows.map(line)].join('\n');
  return caption === undefined ? body : `${caption}\n\n${body}`;
};
